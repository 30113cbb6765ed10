import type { Db } from '@/db/client';
import { listMarks, type ManualMark, type MarkWithManual } from '@/db/queries/question-marks';
import { listSittingAnswers, type SittingAnswer } from '@/db/queries/sitting-answers';
import { listSittingQuestions, type SittingQuestion } from '@/db/queries/sitting-questions';
import { findSitting, type Sitting } from '@/db/queries/sittings';
import type { Answer } from '@/lib/questions/answer';
import type { Mark } from '@/lib/questions/mark';
import type { QuestionBody, QuestionKindId } from '@/lib/questions/question';
import { isUntoldWithin, withinWhat } from '../turns/untold';

/** A person's sitting at questions as they may take it away. */
export interface HeldSitting extends Pick<Sitting, 'organizationId' | 'mode' | 'topics' | 'demo' | 'closesAt'> {
  sittingId: string;
  startedAt: Date;
  handedInAt: Date | null;
  questions: readonly HeldQuestion[];
}

export interface HeldQuestion extends Pick<SittingQuestion, 'place' | 'flagged' | 'askedAt'> {
  /** Null for a question that somebody wrote. */
  kind: QuestionKindId | null;
  topic: string | null;
  /** In order; the last counts. */
  answers: readonly { seq: number; at: Date; answer: Answer }[];
  /** Null while it is not marked, or nothing may be told of it: until then nothing may tell the key, nor the seed that it is drawn from. */
  marked: HeldMark | null;
}

interface HeldMark {
  at: Date;
  /** The answer that counted. */
  answer: Answer | null;
  asked: QuestionBody;
  mark: Mark;
  /** What a person gave last, where one had to mark it. */
  byHand: ManualMark | null;
}

/** A person's sitting with all that was asked and answered; undefined when it is missing or someone else's. */
export async function heldSitting(
  db: Db,
  personId: string,
  sittingId: string,
  now: Date,
): Promise<HeldSitting | undefined> {
  const sitting = await findSitting(db, personId, sittingId);
  if (!sitting) return undefined;
  const answers = await listSittingAnswers(db, personId, sittingId);
  const untold = isUntoldWithin(await withinWhat(db, { sittingId }), now);
  const marks = untold ? [] : await listMarks(db, personId, sittingId);
  const questions = await listSittingQuestions(db, personId, sittingId);
  const { organizationId, mode, topics, demo, createdAt: startedAt, closesAt, handedInAt } = sitting;
  return {
    ...{ sittingId, organizationId, mode, topics, demo, startedAt, closesAt, handedInAt },
    questions: questions.map((question) => heldQuestion(question, answers, marks)),
  };
}

function heldQuestion(
  { place, spec, flagged, askedAt }: SittingQuestion,
  answers: readonly SittingAnswer[],
  marks: readonly MarkWithManual[],
): HeldQuestion {
  const mark = marks.find((one) => one.place === place);
  return {
    ...{ place, flagged, askedAt },
    kind: spec?.kind ?? null,
    topic: spec?.topic ?? null,
    answers: answers
      .filter((answer) => answer.place === place)
      .map(({ seq, answeredAt: at, body: answer }) => ({ seq, at, answer })),
    marked: mark ? heldMark(mark) : null,
  };
}

function heldMark({ markedAt: at, answer, asked, mark, manual: byHand }: MarkWithManual): HeldMark {
  return { at, answer, asked: withoutGuidance(asked), mark, byHand };
}

/** What is said to whoever marks free text is for them alone. */
function withoutGuidance(asked: QuestionBody): QuestionBody {
  return asked.key.form === 'words' ? { ...asked, key: { ...asked.key, guidance: '' } } : asked;
}
