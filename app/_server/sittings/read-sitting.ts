import { listMarks, type MarkWithManual } from '@/db/queries/question-marks';
import { listSittingAnswers, type SittingAnswer } from '@/db/queries/sitting-answers';
import { listSittingQuestions, type SittingQuestion } from '@/db/queries/sitting-questions';
import { findSitting, type Sitting } from '@/db/queries/sittings';
import type { Answer } from '@/lib/questions/answer';
import { database } from '../database';
import type { Desk } from '../permit';
import { presentVersion } from '../questions/asked-question';

/** A question of a sitting with what has come of it. */
export interface SittingPlace extends SittingQuestion {
  /** The last answer to the question that is asked here now. */
  answer: Answer | undefined;
  mark: MarkWithManual | undefined;
}

export interface ReadSitting {
  sitting: Sitting;
  places: SittingPlace[];
  /** Number of the last answer; 0 without one. */
  lastSeq: number;
  /** Of all answers. */
  keys: ReadonlySet<string>;
}

/** A learner's own sitting with all that was asked and answered; undefined when it is missing or someone else's. */
export async function readSitting({ learnerId }: Desk, sittingId: string): Promise<ReadSitting | undefined> {
  const db = database();
  const sitting = await findSitting(db, learnerId, sittingId);
  if (!sitting) return undefined;
  const [questions, answers, marks] = await Promise.all([
    listSittingQuestions(db, learnerId, sittingId),
    listSittingAnswers(db, learnerId, sittingId),
    listMarks(db, learnerId, sittingId),
  ]);
  const places = questions.map((question) => ({
    ...question,
    answer: lastAnswer(question, answers),
    mark: marks.find(({ place }) => place === question.place),
  }));
  return { sitting, places, lastSeq: answers.at(-1)?.seq ?? 0, keys: new Set(answers.map(({ key }) => key)) };
}

/** Answers from before the question was asked were to another one, which content has changed since. */
function lastAnswer({ place, askedAt }: SittingQuestion, answers: readonly SittingAnswer[]): Answer | undefined {
  return answers.findLast((answer) => answer.place === place && answer.answeredAt >= askedAt)?.body;
}

/** Whether a place's question is drawn now as it was when it was asked. */
export function isPresent({ questionVersion, questionHash }: SittingQuestion): boolean {
  const present = presentVersion();
  return questionVersion === present.questionVersion && questionHash === present.questionHash;
}

/** What was on its way when the time ran out still counts if it comes so soon, ms. */
export const GRACE = 15_000;

/** Whether answers are still taken. */
export function isOpen({ handedInAt, closesAt }: Sitting, at: Date): boolean {
  return handedInAt === null && !isOverdue({ closesAt }, at);
}

/** Whether the time is over, with what was on its way. */
export function isOverdue({ closesAt }: Pick<Sitting, 'closesAt'>, at: Date): boolean {
  return closesAt !== null && at.getTime() - GRACE >= closesAt.getTime();
}
