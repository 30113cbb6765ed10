import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { SittingRules } from '@/lib/readiness/sitting-rules';
import { phaseOfTopic, type SittingState } from '@/lib/readiness/sitting-state';
import { madeUpPool, sit } from '../../support/sittings';

const TOPICS = ['one', 'two', 'three', 'four', 'five'];
const seeds = fc.integer({ min: 0, max: 1e6 }).map(String);
const abilities = fc.double({ min: -3, max: 3, noNaN: true });
const shapes = fc.record({
  topics: fc.integer({ min: 1, max: 5 }).map((count) => TOPICS.slice(0, count)),
  cases: fc.integer({ min: 0, max: 12 }),
  questions: fc.integer({ min: 0, max: 60 }),
});
const limits = fc.record({
  minimum: fc.integer({ min: 1, max: 5 }),
  maximum: fc.integer({ min: 5, max: 12 }),
  cases: fc.integer({ min: 0, max: 4 }),
  minutes: fc.integer({ min: 5, max: 120 }),
});
const sittings = fc.record({ shape: shapes, limit: limits, ability: abilities, seed: seeds });

function sat({ shape, limit, ability, seed }: typeof sittings extends fc.Arbitrary<infer One> ? One : never) {
  const rules = rulesFor(shape.topics, limit);
  const tasks = madeUpPool(shape, seed);
  return { rules, tasks, sitting: sit(tasks, rules, () => ability, seed) };
}

test('nobody is given the same task twice', () => {
  fc.assert(
    fc.property(sittings, (spec) => {
      const given = sat(spec).sitting.steps.map(({ task }) => task.id);
      expect(new Set(given).size).toBe(given.length);
    }),
    { numRuns: 300, seed: 1 },
  );
});

test('a sitting ends for the reason that it gives', () => {
  fc.assert(
    fc.property(sittings, (spec) => {
      const { rules, tasks, sitting } = sat(spec);
      const { end, steps, states } = sitting;
      const last = states.at(-1) as SittingState;
      const open = rules.topics
        .filter((topic) => phaseOfTopic(last, topic, rules) === 'open')
        .map(({ topic }) => topic);
      const owed = rules.cases - steps.filter(({ task }) => task.kind === 'case').length;
      const unmet = tasks.filter(({ exposure, kind, topics }) => {
        const wanted = open.length > 0 ? topics.some(({ topic }) => open.includes(topic)) : kind === 'case';
        return wanted && !last.met.has(exposure);
      });
      if (end === 'decided') expect([open, owed <= 0]).toEqual([[], true]);
      if (end === 'all-asked') expect(unmet.length === 0 || (open.length === 0 && owed <= 0)).toBe(true);
      if (end === 'time') expect(unmet.every(({ seconds }) => last.elapsed + seconds > rules.seconds)).toBe(true);
    }),
    { numRuns: 300, seed: 2 },
  );
});

test('the same seed and the same answers give the same tasks again', () => {
  fc.assert(
    fc.property(sittings, (spec) => {
      expect(sat(spec).sitting.steps).toEqual(sat(spec).sitting.steps);
    }),
    { numRuns: 100, seed: 3 },
  );
});

test('what is given stands among the five worthiest, the worthiest first', () => {
  fc.assert(
    fc.property(sittings, (spec) => {
      for (const { task, choice } of sat(spec).sitting.steps) {
        expect(choice.contenders.length).toBeLessThanOrEqual(5);
        expect(choice.contenders.map(({ poolTaskId }) => poolTaskId)).toContain(task.id);
        const worths = choice.contenders.map(({ worth }) => worth);
        expect(worths).toEqual([...worths].sort((a, b) => b - a));
        expect(task.topics.map(({ topic }) => topic)).toContain(choice.topic);
      }
    }),
    { numRuns: 100, seed: 4 },
  );
});

/*
 * With shares w that sum to 1 and K topics: whenever another topic's turn comes, it lies no further ahead than t, so its turns number
 * at most c(t) · w(u) / w(t) + 1. Summed up, n ≤ c(t) / w(t) + K − 1. A case that is owed may go to another topic's turn.
 */
test('no topic falls further behind its share than turns in order allow', () => {
  const shares = fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 5, maxLength: 5 });
  fc.assert(
    fc.property(shares, abilities, seeds, (given, ability, seed) => {
      const rules = {
        ...rulesFor(TOPICS, { minimum: 99, maximum: 99, cases: 0, minutes: 30 }),
        topics: sharing(given),
      };
      const { states } = sit(
        madeUpPool({ topics: TOPICS, cases: 20, questions: 400 }, seed),
        rules,
        () => ability,
        seed,
      );
      const whole = given.reduce((sum, one) => sum + one, 0);
      for (const [steps, { tallies }] of states.entries())
        for (const { topic, share } of rules.topics)
          expect(tallies.get(topic)?.count ?? 0).toBeGreaterThanOrEqual(
            (share / whole) * (steps - TOPICS.length + 1) - 1e-9,
          );
    }),
    { numRuns: 100, seed: 5 },
  );

  function sharing(given: readonly number[]) {
    return rulesFor(TOPICS, { minimum: 99, maximum: 99, cases: 0, minutes: 30 }).topics.map((topic, at) => ({
      ...topic,
      share: given[at] ?? 1,
    }));
  }
});

test('a topic that is decided, or was asked of as often as may be, is never the one that a task is given for', () => {
  fc.assert(
    fc.property(sittings, (spec) => {
      const { rules, sitting } = sat(spec);
      const { steps, states } = sitting;
      for (const [at, { choice }] of steps.entries()) {
        const state = states[at] as SittingState;
        const phases = rules.topics.map((topic) => ({ topic: topic.topic, phase: phaseOfTopic(state, topic, rules) }));
        if (phases.every(({ phase }) => phase !== 'open')) continue;
        expect(phases.find(({ topic }) => topic === choice.topic)?.phase).toBe('open');
      }
    }),
    { numRuns: 200, seed: 6 },
  );
});

function rulesFor(
  topics: readonly string[],
  { minimum, maximum, cases, minutes }: { minimum: number; maximum: number; cases: number; minutes: number },
): SittingRules {
  return {
    topics: topics.map((topic) => ({ topic, cut: 0.5, confidence: 0.9, share: 1, atLeast: minimum })),
    refuse: 0.1,
    maximum,
    cases,
    seconds: minutes * 60,
  };
}
