import { describe, expect, test } from 'vitest';
import type { Evidence } from '@/lib/competency/evidence';
import { evidenceOfObservation } from '@/lib/competency/evidence-of-observation';
import { evidenceOfQuestion } from '@/lib/competency/evidence-of-question';
import { revisionsDue, standingRevisions } from '@/lib/competency/revisions';
import { taskModelSchema } from '@/lib/competency/task-model';
import { aResponse } from '../../support/graded-case';
import { aBody } from '../../support/sitting-rows';

const difficulty = { logits: -0.25, spread: 0.5 };
const asked = (changes = {}) => ({ ...aBody, topics: ['filtration'], steps: 1, guessFloor: 0.25, ...changes });

describe('a question', () => {
  const of = (question = asked(), points: number | null = 1, answered = true) =>
    evidenceOfQuestion({ asked: question, answered, points }, difficulty, aResponse);

  test('is right or wrong, with what guessing brings', () => {
    expect(of()).toMatchObject([
      {
        score: 1,
        model: { kind: 'choice', difficulty: -0.25, floor: 0.25, spread: 0.5 },
        detail: { because: 'answered' },
      },
    ]);
    expect(of(asked(), 0.99)).toMatchObject([{ score: 0 }]);
  });

  test('tells of each of its topics once', () => {
    expect(of(asked({ topics: ['fuel-quality', 'filtration', 'fuel-quality'] })).map(({ topic }) => topic)).toEqual([
      'filtration',
      'fuel-quality',
    ]);
  });

  test('in steps is scored in whole ones, around its difficulty', () => {
    expect(of(asked({ steps: 3 }), 2.75)).toMatchObject([
      { score: 2, model: { kind: 'steps', steps: [-1.25, -0.25, 0.75], spread: 0.5 } },
    ]);
    expect(of(asked({ steps: 3 }), 3 - 1e-12)).toMatchObject([{ score: 3 }]);
  });

  test('of very many steps has a model that can be stored', () => {
    const [one] = of(asked({ steps: 30 }), 15);
    expect(taskModelSchema.safeParse(one?.model).success).toBe(true);
    expect(one?.score).toBe(6);
  });

  test('tells nothing while a person has to mark it, and of what was passed over that it was', () => {
    expect(of(asked(), null)).toEqual([]);
    expect(of(asked(), 0, false)).toMatchObject([{ score: 0, detail: { because: 'passed-over' } }]);
  });
});

describe('a hands-on check', () => {
  const items = [
    { topic: 'filtration', outOf: 4, score: 3 },
    { topic: 'filtration', outOf: 2, score: 2 },
    { topic: 'fuel-quality', outOf: 1, score: 0 },
  ];

  test('is one response a topic, however much was looked for', () => {
    // Five of six points: three whole quarters.
    expect(evidenceOfObservation({ items, unsafe: true }, aResponse)).toMatchObject([
      { topic: 'filtration', score: 3, model: { steps: [-1.5, -0.5, 0.5, 1.5], spread: 1 }, safetyEvents: 1 },
      { topic: 'fuel-quality', score: 0, model: { steps: [0], spread: 1 } },
    ]);
  });
});

describe('the log', () => {
  const derived = evidenceOfQuestion({ asked: asked(), answered: true, points: 1 }, difficulty, aResponse);
  const logged = (changes: Partial<Evidence> = {}): Evidence[] =>
    derived.map((one) => ({ ...one, revision: 1, ...changes }));

  test('gets a first revision, and nothing where it says the same', () => {
    expect(revisionsDue(derived, [])).toEqual(logged());
    // As stored and read again.
    expect(revisionsDue(derived, JSON.parse(JSON.stringify(logged())))).toEqual([]);
  });

  test('gets another where something differs, after the last', () => {
    const before = [...logged({ score: 0 }), ...logged({ revision: 2, score: 0, hints: 1 })];
    expect(revisionsDue(derived, before)).toEqual(logged({ revision: 3 }));
  });

  test('says of what is no longer tested that it does not count, once', () => {
    const before = logged({ topic: 'fuel-quality' });
    const due = revisionsDue(derived, before);
    expect(due).toContainEqual({ ...before[0], counts: false, revision: 2 });
    expect(revisionsDue(derived, [...before, ...due])).toEqual([]);
  });

  test('says nothing of what was withdrawn before it was ever there', () => {
    expect(
      revisionsDue(
        derived.map((one) => ({ ...one, counts: false })),
        [],
      ),
    ).toEqual([]);
  });

  test('has the last revision count, in whatever order it is read', () => {
    const all = [...logged({ revision: 2, score: 0 }), ...logged()];
    expect(standingRevisions(all)).toEqual(logged({ revision: 2, score: 0 }));
    expect(standingRevisions([...all].reverse())).toEqual(logged({ revision: 2, score: 0 }));
  });
});
