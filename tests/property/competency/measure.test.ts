import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decideAll, decideTopic, evidenceAt, whenItLapses } from '@/lib/competency/decide';
import { GRID } from '@/lib/competency/grid';
import {
  chanceAtOrAbove,
  expectedInformation,
  intervalOf,
  meanOf,
  type Posterior,
  priorOf,
  spreadOf,
} from '@/lib/competency/posterior';
import {
  agedTo,
  emptyTally,
  type HalfLife,
  posteriorAt,
  type Response,
  tallyOf,
  withResponse,
} from '@/lib/competency/tally';
import { fromBytes, toBytes } from '@/lib/competency/tally-bytes';
import {
  chance,
  expectedScore,
  highestScore,
  information,
  logChances,
  type TaskModel,
} from '@/lib/competency/task-model';

const runs = { numRuns: 200, seed: 20_261_127 };
const DAY = 86_400_000;

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const spread = fc.constantFrom(0, 0.3, 0.5, 1);
const anyModel: fc.Arbitrary<TaskModel> = fc.oneof(
  fc.record({
    kind: fc.constant('choice' as const),
    difficulty: number(-4, 4),
    slope: fc.constantFrom(0.6, 1, 1.7),
    floor: fc.constantFrom(0, 0.2, 0.25, 0.5),
    spread,
  }),
  fc.record({
    kind: fc.constant('steps' as const),
    steps: fc.array(number(-3, 3), { minLength: 1, maxLength: 5 }),
    spread,
  }),
);
const anyScored = anyModel.chain((model) =>
  fc.record({ model: fc.constant(model), score: fc.integer({ min: 0, max: highestScore(model) }) }),
);
const anyResponse: fc.Arbitrary<Response> = fc
  .tuple(anyScored, fc.integer({ min: 0, max: 1000 * DAY }), fc.constantFrom(0, 0.25, 0.5, 1))
  .map(([scored, at, weight]) => ({ ...scored, at, weight }));
const anyResponses = fc.array(anyResponse, { maxLength: 30 });
const anyHalfLife: fc.Arbitrary<HalfLife> = fc.constantFrom(null, Number.POSITIVE_INFINITY, 30, 180, 720);
const theta = number(-6, 6);

function expectSame(one: ArrayLike<number>, other: ArrayLike<number>): void {
  for (let at = 0; at < one.length; at++)
    expect(Math.abs((one[at] as number) - (other[at] as number))).toBeLessThanOrEqual(
      1e-9 * (1 + Math.abs(other[at] as number)),
    );
}

describe('tasks', () => {
  test('have scores whose chances sum to 1, and expected points that are theirs and rise', () => {
    fc.assert(
      fc.property(anyModel, theta, (model, at) => {
        const chances = Array.from({ length: highestScore(model) + 1 }, (_, score) => chance(model, score, at));
        expect(chances.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 12);
        const { points, slope } = expectedScore(model, at);
        expect(points).toBeCloseTo(
          chances.reduce((sum, one, score) => sum + score * one, 0),
          9,
        );
        const rise = expectedScore(model, at + 1e-4).points - expectedScore(model, at - 1e-4).points;
        expect(slope).toBeCloseTo(rise / 2e-4, 5);
        expect(slope).toBeGreaterThan(0);
        expect(information(model, at)).toBeGreaterThanOrEqual(0);
      }),
      runs,
    );
  });

  test('are the same on the grid as point by point', () => {
    fc.assert(
      fc.property(anyScored, ({ model, score }) => {
        const each = Array.from(GRID, (at) => Math.log(chance(model, score, at)));
        expectSame(logChances(model, score), each);
      }),
      runs,
    );
  });
});

describe('a tally', () => {
  test('does not depend on the order of responses, and taking one in is as good as beginning anew', () => {
    fc.assert(
      fc.property(anyResponses, fc.infiniteStream(number(0, 1)), anyHalfLife, (responses, keys, halfLife) => {
        const order = responses.map((response) => ({ response, key: keys.next().value as number }));
        const shuffled = order.sort((a, b) => a.key - b.key).map(({ response }) => response);
        const step = shuffled.reduce((tally, response) => withResponse(tally, response, halfLife), emptyTally);
        const whole = tallyOf(responses, halfLife);
        expect([step.at, step.count]).toEqual([whole.at, whole.count]);
        expect(step.weight).toBeCloseTo(whole.weight, 9);
        expectSame(step.sum, whole.sum);
      }),
      runs,
    );
  });

  test('fades as if it were worked out later', () => {
    fc.assert(
      fc.property(
        anyResponses,
        fc.integer({ min: 0, max: 2000 }),
        fc.constantFrom(30, 180),
        (responses, days, halfLife) => {
          const tally = tallyOf(responses, halfLife);
          const now = 1000 * DAY + days * DAY;
          const fresh = new Float64Array(GRID.length);
          for (const { at, model, score, weight } of responses) {
            const left = weight * 2 ** (-(now - at) / (halfLife * DAY));
            for (const [point, log] of logChances(model, score).entries())
              fresh[point] = (fresh[point] as number) + left * log;
          }
          expectSame(agedTo(tally, now, halfLife), fresh);
        },
      ),
      runs,
    );
  });

  test('is kept in bytes without loss, wherever they lie in a buffer', () => {
    fc.assert(
      fc.property(anyResponses, fc.integer({ min: 0, max: 9 }), (responses, offset) => {
        const { sum } = tallyOf(responses, 180);
        const bytes = toBytes(sum);
        const elsewhere = new Uint8Array(bytes.length + offset);
        elsewhere.set(bytes, offset);
        expect(fromBytes(elsewhere.subarray(offset))).toEqual(sum);
      }),
      runs,
    );
  });
});

const posteriorOf = (responses: readonly Response[]): Posterior => posteriorAt(tallyOf(responses, null), 0, null);

describe('a posterior', () => {
  test('sums to 1, and has a mean and a spread that are finite', () => {
    fc.assert(
      fc.property(anyResponses, (responses) => {
        const posterior = posteriorOf(responses);
        expect(posterior.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
        expect(Math.abs(meanOf(posterior))).toBeLessThan(6);
        expect(spreadOf(posterior)).toBeGreaterThan(0);
        expect(spreadOf(posterior)).toBeLessThan(3);
      }),
      runs,
    );
  });

  test('is never lower for a better score', () => {
    fc.assert(
      fc.property(anyResponses, anyModel, theta, (responses, model, cut) => {
        const chances = Array.from({ length: highestScore(model) + 1 }, (_, score) =>
          chanceAtOrAbove(posteriorOf([...responses, { at: 0, model, score, weight: 1 }]), cut),
        );
        for (const [score, one] of chances.entries())
          expect(one).toBeGreaterThanOrEqual((chances[score - 1] ?? 0) - 1e-12);
      }),
      runs,
    );
  });

  test('has a chance that falls with the cut and never jumps, and an interval that is its inverse', () => {
    fc.assert(
      fc.property(anyResponses, number(-6.2, 6.2), number(0.5, 0.99), (responses, cut, share) => {
        const posterior = posteriorOf(responses);
        const [here, further] = [chanceAtOrAbove(posterior, cut), chanceAtOrAbove(posterior, cut + 1e-6)];
        expect(further).toBeLessThanOrEqual(here + 1e-12);
        // A density is nowhere above 1 over its step.
        expect(here - further).toBeLessThanOrEqual(1e-6 / 0.05 + 1e-12);
        const { low, high } = intervalOf(posterior, share);
        expect(chanceAtOrAbove(posterior, low)).toBeCloseTo(1 - (1 - share) / 2, 9);
        expect(chanceAtOrAbove(posterior, high)).toBeCloseTo((1 - share) / 2, 9);
        expect(high).toBeGreaterThan(low);
      }),
      runs,
    );
  });

  test('expects as much information as its points do on the average', () => {
    fc.assert(
      fc.property(anyResponses, anyModel, (responses, model) => {
        const posterior = posteriorOf(responses);
        const mean = posterior.reduce((sum, share, at) => sum + share * information(model, GRID[at] as number), 0);
        // Points with shares below 1e-9 are left out: 2e-7 of at most 6 square points in all.
        expect(expectedInformation(posterior, model)).toBeCloseTo(mean, 5);
      }),
      runs,
    );
  });

  test('of a prior and nothing else is the prior, moved with its mean', () => {
    fc.assert(
      fc.property(number(-2, 2), number(0.3, 1), (mean, sd) => {
        const posterior = posteriorAt(emptyTally, 0, 180, priorOf(mean, sd));
        expect(meanOf(posterior)).toBeCloseTo(mean, 2);
        expect(chanceAtOrAbove(posterior, mean)).toBeCloseTo(0.5, 2);
      }),
      runs,
    );
  });
});

const anyRule = fc.record({
  confidence: fc.constantFrom(0.8, 0.9, 0.95),
  refuse: fc.constantFrom(0.02, 0.05, 0.1),
  minimum: fc.integer({ min: 1, max: 10 }),
});
const ranks = { 'not-yet': 0, 'not-enough-evidence': 1, ready: 2 } as const;

describe('a decision', () => {
  test('is never worse for a better chance', () => {
    fc.assert(
      fc.property(number(0, 1), number(0, 1), fc.nat(20), anyRule, (one, other, count, rule) => {
        const [lower, higher] = [Math.min(one, other), Math.max(one, other)];
        expect(ranks[decideTopic({ chance: lower, count }, rule)]).toBeLessThanOrEqual(
          ranks[decideTopic({ chance: higher, count }, rule)],
        );
      }),
      runs,
    );
  });

  test('of several topics is never better than that of any of them', () => {
    const anyDecision = fc.constantFrom('ready' as const, 'not-yet' as const, 'not-enough-evidence' as const);
    fc.assert(
      fc.property(fc.array(anyDecision, { minLength: 1, maxLength: 6 }), (each) => {
        const worst = Math.min(...each.map((one) => ranks[one]));
        expect(ranks[decideAll(each)]).toBe(worst);
      }),
      runs,
    );
  });

  test('lapses on the first day on which it is not ready any more', () => {
    const good = fc.array(
      fc.tuple(anyModel, fc.integer({ min: 900 * DAY, max: 1000 * DAY })).map(([model, at]) => ({
        at,
        model,
        score: highestScore(model),
        weight: 1,
      })),
      { minLength: 8, maxLength: 25 },
    );
    fc.assert(
      fc.property(
        good,
        fc.array(anyResponse, { maxLength: 6 }),
        number(-2.5, 1.5),
        anyRule,
        (right, others, cut, rule) => {
          const scale = { cut, halfLifeDays: 60 };
          const tally = tallyOf([...right, ...others], 60);
          const from = 1000 * DAY;
          const days = Array.from({ length: 366 }, (_, day) => day);
          const ready = days.map((day) => decideTopic(evidenceAt(tally, from + day * DAY, scale), rule) === 'ready');
          const first = ready.indexOf(false);
          const expected = first > 0 ? from + first * DAY : null;
          expect(whenItLapses(tally, rule, scale, { from, horizonDays: 365 })).toBe(expected);
        },
      ),
      runs,
    );
  });
});
