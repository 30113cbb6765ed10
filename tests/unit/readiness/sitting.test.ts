import { describe, expect, test } from 'vitest';
import type { TaskModel } from '@/lib/competency/task-model';
import { randomStream } from '@/lib/random';
import { nextStep, topicsRunDry } from '@/lib/readiness/sitting';
import { type SittingTask, sittingPool } from '@/lib/readiness/sitting-pool';
import type { SittingRules } from '@/lib/readiness/sitting-rules';
import { phaseOfTopic, type SittingState, sittingOf } from '@/lib/readiness/sitting-state';
import { madeUpPool, sit } from '../../support/sittings';

const rules: SittingRules = {
  topics: ['filtration', 'fuel-quality'].map((topic) => ({ topic, cut: 0.5, confidence: 0.9, share: 1, atLeast: 3 })),
  refuse: 0.1,
  maximum: 20,
  cases: 2,
  seconds: 3600,
};
const shape = { topics: ['filtration', 'fuel-quality'], cases: 12, questions: 120 };

describe('the next task of a sitting', () => {
  test('is the one that tells most at the cut for its minutes, or one of the four after it', () => {
    const tasks = [-2, -1, 0, 0.5, 0.6, 1, 2].map((difficulty) => question(`at ${difficulty}`, { difficulty }));
    const drawn = new Set(draws(tasks, 200));
    expect([...drawn].sort()).toEqual(['at 0', 'at 0.5', 'at 0.6', 'at 1', 'at -1'].sort());
  });

  test('weighs a case against questions by what it tells a minute', () => {
    const alike: TaskModel = { kind: 'choice', difficulty: 0.5, floor: 0, spread: 0 };
    const slow: SittingTask = {
      ...question('case', {}),
      kind: 'case',
      seconds: 600,
      topics: [{ topic: 'filtration', model: alike }],
    };
    const quick = Array.from({ length: 5 }, (_, at) => question(`quick ${at}`, { difficulty: 2 }));
    expect(draws([slow, ...quick], 50)).not.toContain('case');
    expect(draws([{ ...slow, seconds: 60 }, ...quick], 50)).toContain('case');
  });

  test('was not given often, as long as there is another', () => {
    const often = { ...question('often', {}), exposures: 50 };
    const others = Array.from({ length: 6 }, (_, at) => question(`seldom ${at}`, { difficulty: 2.5 }));
    expect(draws([often, ...others], 50)).not.toContain('often');
    expect(draws([often], 5)).toContain('often');
  });

  test('is not like one of the last three, as long as there is another', () => {
    const state: SittingState = { ...sittingOf(), given: [{ kind: 'question', family: 'judge' }] };
    const judge = { ...question('judge', {}), family: 'judge' };
    expect(draws([judge, question('other', { difficulty: 3 })], 20, state)).toEqual(Array(20).fill('other'));
    expect(draws([judge], 1, state)).toEqual(['judge']);
  });

  test('is none that the person has met before', () => {
    const tasks = [question('met', {}), question('new', { difficulty: 3 })];
    expect(draws(tasks, 20, sittingOf(['met']))).toEqual(Array(20).fill('new'));
    expect(topicsRunDry(sittingOf(['met', 'new']), sittingPool(tasks, rules), rules)).toEqual([
      'filtration',
      'fuel-quality',
    ]);
  });

  test('is a case after each question while cases are owed', () => {
    const { steps } = sit(madeUpPool(shape, 'owed'), { ...rules, cases: 4 }, () => 0.5, 'owed');
    const kinds = steps.map(({ task }) => task.kind).join(' ');
    const [untilFour = ''] = /^(?:.*?case){4}/.exec(kinds) ?? [];
    expect(untilFour).not.toMatch(/question question/);
  });
});

describe('a sitting', () => {
  test('decides somebody far from the cut in fewer tasks than somebody at it', () => {
    const mean = (ability: number) =>
      average(
        Array.from(
          { length: 20 },
          (_, at) => sit(madeUpPool(shape, 'length'), rules, () => ability, `${at}`).steps.length,
        ),
      );
    expect(mean(2.5)).toBeLessThan(mean(0.5));
    expect(mean(-2)).toBeLessThan(mean(0.5));
  });

  test('lets few pass who are half a logit below the cut, and many who are two above', () => {
    const passed = (ability: number) => average(sitters.map((seed) => Number(decided(ability, seed) === 'ready')));
    // A false pass at cut − 0.5 happens to 0.059 where one topic is asked of by 8 to 30 questions (rule 0.90): 40 people, so ±0.08.
    expect(passed(0)).toBeLessThanOrEqual(0.15);
    expect(passed(2.5)).toBeGreaterThanOrEqual(0.8);
  });

  test('ends undecided, not with a no, where it runs out of tasks', () => {
    const { end, states } = sit(madeUpPool({ ...shape, cases: 2, questions: 4 }, 'short'), rules, () => 0.5, 'short');
    expect(end).toBe('all-asked');
    expect(rules.topics.map((topic) => phaseOfTopic(states.at(-1) as SittingState, topic, rules))).toContain('open');
  });

  test('asks for its cases though every topic is decided', () => {
    const { steps, end } = sit(
      madeUpPool({ ...shape, questions: 400, cases: 6 }, 'gate'),
      { ...rules, cases: 6, seconds: 36_000 },
      () => 3,
      'gate',
    );
    expect(steps.filter(({ task }) => task.kind === 'case')).toHaveLength(6);
    expect(end).toBe('decided');
  });
});

const sitters = Array.from({ length: 40 }, (_, at) => `sitter ${at}`);

/** What a sitting comes to on its first topic. */
function decided(ability: number, seed: string): 'ready' | 'other' {
  const { states } = sit(madeUpPool(shape, 'passing'), rules, () => ability, seed);
  const last = states.at(-1) as SittingState;
  const [topic] = rules.topics;
  if (!topic || phaseOfTopic(last, topic, rules) !== 'decided') return 'other';
  const refused = phaseOfTopic(last, { ...topic, confidence: 0.999 }, { ...rules, refuse: 0.1 }) === 'decided';
  return refused ? 'other' : 'ready';
}

function draws(tasks: readonly SittingTask[], times: number, state = sittingOf()): string[] {
  const pool = sittingPool(tasks, rules);
  return Array.from({ length: times }, (_, at) => {
    const step = nextStep(state, pool, rules, randomStream('draws', `${at}`));
    return 'task' in step ? step.task.id : step.end;
  });
}

function question(id: string, { difficulty = 0.5, floor = 0 }): SittingTask {
  const topics = [{ topic: 'filtration', model: { ...modelAt(difficulty), floor } }];
  return { id, kind: 'question', exposure: id, family: id, topics, seconds: 60, exposures: 0 };
}

function modelAt(difficulty: number) {
  return { kind: 'choice' as const, difficulty, floor: 0, spread: 0.5 };
}

function average(numbers: readonly number[]): number {
  return numbers.reduce((sum, one) => sum + one, 0) / numbers.length;
}
