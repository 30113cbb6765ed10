import { describe, expect, test } from 'vitest';
import { logRatio, sprtBounds, sprtDecision } from '@/lib/competency/sprt';
import { exactCharacteristics } from '../../support/exact-characteristics';
import { choice } from '../../support/task-models';

/* Reference page, section 2.6: Wald's test, its plans and its exact characteristics, computed for the page (run) unless said otherwise. */

const logit = (chance: number) => Math.log(chance / (1 - chance));

describe('bounds', () => {
  const rows = [
    [0.05, 0.05, 2.944439, -2.944439],
    [0.05, 0.1, 2.890372, -2.251292],
    [0.02, 0.1, 3.806662, -2.282382],
    [0.01, 0.05, 4.553877, -2.985682],
  ] as const;

  test.each(rows)('for error rates of %d and %d', (falseReady, falseNotYet, upper, lower) => {
    const bounds = sprtBounds({ falseReady, falseNotYet });
    expect([bounds.upper, bounds.lower]).toEqual([expect.closeTo(upper, 6), expect.closeTo(lower, 6)]);
  });

  test('are those of the sampling plan of the NIST e-Handbook', () => {
    // p1 = 0.01, p2 = 0.10, α = 0.05, β = 0.10: h1 ≈ 0.939, h2 ≈ 1.205, s ≈ 0.0397 (from memory), more decimals run.
    const range = { low: logit(0.01), high: logit(0.1) };
    const [up, down] = [logRatio(choice(0), 1, range), logRatio(choice(0), 0, range)];
    const { lower, upper } = sprtBounds({ falseReady: 0.05, falseNotYet: 0.1 });
    expect(-lower / (up - down)).toBeCloseTo(0.938862, 6);
    expect(upper / (up - down)).toBeCloseTo(1.205379, 6);
    expect(-down / (up - down)).toBeCloseTo(0.039747, 6);
  });
});

describe('tasks that are all alike: 0.60 right is too little, 0.85 enough', () => {
  const range = { low: logit(0.6), high: logit(0.85) };
  const [up, down] = [logRatio(choice(0), 1, range), logRatio(choice(0), 0, range)];
  const bounds = sprtBounds({ falseReady: 0.05, falseNotYet: 0.1 });

  test('a right answer and a wrong one weigh what they should', () => {
    expect([up, down]).toEqual([expect.closeTo(0.348307, 6), expect.closeTo(-0.980829, 6)]);
  });

  test('1110111111111 passes with the thirteenth answer and not before', () => {
    const sums = runningSums([...'1110111111111'].map((right) => (right === '1' ? up : down)));
    expect([3, 4, 12, 13].map((asked) => sums[asked - 1])).toEqual(
      [1.04492, 0.064091, 2.850544, 3.198851].map((sum) => expect.closeTo(sum, 6)),
    );
    expect(sums.map((sum) => sprtDecision(sum, bounds))).toEqual([...new Array(12).fill('continue'), 'ready']);
  });

  test('takes as many answers as Wald’s formula has it', () => {
    // Wald 1947: expected sum at the end over the expected step; 10.8767 and 15.9545.
    const expected = (chance: number, ready: number) =>
      (ready * bounds.upper + (1 - ready) * bounds.lower) / (chance * up + (1 - chance) * down);
    expect(expected(0.6, 0.05)).toBeCloseTo(10.8767, 4);
    expect(expected(0.85, 0.9)).toBeCloseTo(15.9545, 4);
  });

  /** At most so many answers, chance of a right one: shares that pass, fail, stay undecided; mean number of answers. */
  const rows = [
    [60, 0.6, 0.042946, 0.952761, 0.004294, 13.470977],
    [60, 0.75, 0.50029, 0.445153, 0.054556, 23.334039],
    [60, 0.85, 0.92891, 0.064289, 0.006802, 18.112847],
    [20, 0.6, 0.032293, 0.799992, 0.167715, 11.517801],
    [20, 0.85, 0.695356, 0.053228, 0.251416, 14.911086],
  ] as const;

  test.each(rows)(
    'at most %i answers, %d of them right: exactly as worked out elsewhere',
    (most, chance, ...published) => {
      const found = exactCharacteristics(new Array(most).fill(chance), (asked, right) =>
        sprtDecision(right * up + (asked - right) * down, bounds),
      );
      const printed = published.map((one) => expect.closeTo(one, 6));
      expect([found.ready, found.notYet, found.undecided, found.responses]).toEqual(printed);
    },
  );
});

test('ten tasks of different difficulty come close to the bound and do not cross it', () => {
  const difficulties = [-0.5, 0, 0.3, 0.6, 0.9, 1.2, 0.4, 0.2, 0.8, 0.5];
  const sums = runningSums(
    difficulties.map((difficulty, at) => logRatio(choice(difficulty), Number('1110111101'[at]), { low: 0, high: 1 })),
  );
  expect(sums).toEqual(
    [0.272664, 0.652549, 1.103718, 0.628191, 1.224948, 1.890092, 2.365619, 2.792657, 2.365619, 2.865619].map((sum) =>
      expect.closeTo(sum, 6),
    ),
  );
  const bounds = sprtBounds({ falseReady: 0.05, falseNotYet: 0.1 });
  expect(sums.map((sum) => sprtDecision(sum, bounds))).toEqual(new Array(10).fill('continue'));
});

test('a sum on a bound decides', () => {
  const bounds = sprtBounds({ falseReady: 0.05, falseNotYet: 0.1 });
  expect([bounds.upper, bounds.lower].map((sum) => sprtDecision(sum, bounds))).toEqual(['ready', 'not-yet']);
});

function runningSums(steps: readonly number[]): number[] {
  let sum = 0;
  return steps.map((step) => {
    sum += step;
    return sum;
  });
}
