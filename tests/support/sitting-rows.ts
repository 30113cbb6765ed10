import type { Db } from '@/db/client';
import type { QuestionMark } from '@/db/queries/question-marks';
import type { NewAnswer } from '@/db/queries/sitting-answers';
import { askingQuestion, type NewSittingQuestion } from '@/db/queries/sitting-questions';
import { addingSitting, type NewSitting } from '@/db/queries/sittings';
import { together } from '@/db/together';
import type { QuestionBody } from '@/lib/questions/question';

export const start = new Date(Date.UTC(2026, 0, 1, 12));

/** A moment some minutes after sittings start. */
export function minutesOn(minutes: number): Date {
  return new Date(start.getTime() + minutes * 60_000);
}

export function aSitting(changes: Partial<NewSitting> = {}): NewSitting {
  return {
    id: 'sitting-a',
    learnerId: 'ada',
    organizationId: 'harbour',
    key: 'start-a',
    mode: 'check',
    topics: ['filtration'],
    createdAt: start,
    closesAt: null,
    ...changes,
  };
}

export function aPlace(changes: Partial<NewSittingQuestion> = {}): NewSittingQuestion {
  return {
    sittingId: 'sitting-a',
    place: 1,
    spec: { kind: 'judge', seed: 'maple', topic: 'filtration' },
    writtenVersionId: null,
    seed: 'maple',
    questionVersion: 1,
    questionHash: 'abc',
    askedAt: start,
    ...changes,
  };
}

export function anAnswer(changes: Partial<NewAnswer> = {}): NewAnswer {
  return {
    sittingId: 'sitting-a',
    place: 1,
    key: 'answer-1',
    body: { form: 'choice', option: 'a' },
    answeredAt: minutesOn(1),
    openAt: minutesOn(1),
    askedAt: start,
    ...changes,
  };
}

export const aBody: QuestionBody = {
  stem: [{ markdown: 'What now?' }],
  answer: {
    form: 'choice',
    options: [
      { id: 'a', line: { markdown: 'This' } },
      { id: 'b', line: { markdown: 'That' } },
    ],
  },
  key: { form: 'choice', right: ['a'] },
  explanation: [{ markdown: 'Because so.' }],
  topics: ['filtration'],
  difficulty: 0,
  features: {},
  guessFloor: 0.5,
  steps: 1,
  seconds: 60,
};

export function aMark(changes: Partial<QuestionMark> = {}): QuestionMark {
  return {
    sittingId: 'sitting-a',
    place: 1,
    answer: { form: 'choice', option: 'a' },
    asked: aBody,
    mark: { credit: 1, score: 1, notes: [] },
    markedAt: minutesOn(2),
    ...changes,
  };
}

/** Starts a sitting with its first questions. */
export async function begin(db: Db, changes: Partial<NewSitting> = {}, questions = 1): Promise<void> {
  const sitting = aSitting(changes);
  await together(db, [
    addingSitting(db, sitting),
    ...Array.from({ length: questions }, (_, index) =>
      askingQuestion(db, aPlace({ sittingId: sitting.id, place: index + 1, askedAt: sitting.createdAt })),
    ),
  ]);
}
