import {
  listQuestionMarks,
  listSittingAnswers,
  listSittingQuestions,
  type MarkedPlace,
  type SittingQuestion,
} from '@/db/queries/sitting-questions';
import { findSitting, type Sitting } from '@/db/queries/sittings';
import type { Answer } from '@/lib/questions/answer';
import { database } from '../database';
import type { Desk } from '../permit';
import { presentVersion } from '../questions/asked-question';

/** A question of a sitting with what has come of it. */
export interface SittingPlace extends SittingQuestion {
  /** The last answer; undefined where there is none, or where it was given to a question that content has changed since. */
  answer: Answer | undefined;
  mark: MarkedPlace | undefined;
}

export interface ReadSitting {
  sitting: Sitting;
  places: SittingPlace[];
}

/** A sitting with all that was asked and answered; undefined when it is missing or someone else's. */
export async function readSitting({ learnerId }: Desk, sittingId: string): Promise<ReadSitting | undefined> {
  const db = database();
  const sitting = await findSitting(db, learnerId, sittingId);
  if (!sitting) return undefined;
  const [questions, answers, marks] = await Promise.all([
    listSittingQuestions(db, learnerId, sittingId),
    listSittingAnswers(db, learnerId, sittingId),
    listQuestionMarks(db, learnerId, sittingId),
  ]);
  const places = questions.map((question) => ({
    ...question,
    answer: isPresent(question) ? answers.filter(({ place }) => place === question.place).at(-1)?.body : undefined,
    mark: marks.find(({ place }) => place === question.place),
  }));
  return { sitting, places };
}

/** Whether a place's question is drawn now as it was when it was asked. */
export function isPresent({ questionVersion, questionHash }: SittingQuestion): boolean {
  const present = presentVersion();
  return questionVersion === present.questionVersion && questionHash === present.questionHash;
}

/** What was on its way when the time ran out still counts if it comes so soon. */
export const GRACE = 15_000;

export function isOpen({ handedInAt, closesAt }: Sitting, at: Date): boolean {
  return handedInAt === null && (closesAt === null || at.getTime() < closesAt.getTime());
}
