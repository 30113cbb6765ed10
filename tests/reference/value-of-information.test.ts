import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { entropy, weighed } from '@/lib/diagnosis/belief';
import { expectedCost, type Repair, repairOrder } from '@/lib/diagnosis/repair-order';
import { type Outcome, stakesOf, valueOfLook } from '@/lib/diagnosis/value-of-look';
import { costInOrder } from '../support/cost-in-order';

/*
 * What a look is worth, against closed forms, against every possible order, and against two worked examples. The examples
 * were computed by another programme beforehand and are held to the digits that it printed; the method is that of Kadane &
 * Simon 1977 and Heckerman, Breese & Rommelse 1995 (CACM 38(3)), of which only the abstracts could be read.
 */

/** Of a test that says yes or no: its chance of yes under each fault. */
const yesOrNo = (yes: readonly number[]) => [yes, yes.map((chance) => 1 - chance)];
const bits = (nats: number) => nats / Math.LN2;

/** What a test of these outcomes (rows) under each fault (columns) is worth where each fault has a repair of its own. */
function look(
  prior: readonly number[],
  rows: readonly (readonly number[])[],
  minutes = 0,
  costs = Float64Array.from(prior, () => 1),
) {
  const stakes = stakesOf(Float64Array.from(prior), Int32Array.from(prior.keys()), costs);
  return valueOfLook(stakes, rows.map(outcomeIn(prior)), minutes);
}

function outcomeIn(prior: readonly number[]): (row: readonly number[]) => Outcome {
  return (row) => ({
    onceIn: 1 / prior.reduce((sum, share, fault) => sum + share * (row[fault] ?? 0), 0),
    weigh: (weights) => {
      weights.forEach((weight, fault) => {
        weights[fault] = weight * (row[fault] ?? 0);
      });
    },
  });
}

const posterior = (prior: readonly number[], row: readonly number[]) => [
  ...weighed(Float64Array.from(prior), Float64Array.from(row)),
];

/** Every order of the numbers below `count`. */
function orders(count: number): number[][] {
  if (count === 0) return [[]];
  return orders(count - 1).flatMap((order) =>
    Array.from({ length: count }, (_, at) => [...order.slice(0, at), count - 1, ...order.slice(at)]),
  );
}

describe('worked example A, five repairs', () => {
  const probabilities = [0.35, 0.25, 0.2, 0.15, 0.05];
  const costs = [45, 10, 20, 5, 30];
  const repairs = probabilities.map((probability, index) => ({ probability, cost: costs[index] ?? 0 }));
  const by = (key: (repair: Repair) => number) =>
    [...repairs.keys()].sort((a, b) => key(repairs[a] as Repair) - key(repairs[b] as Repair));

  test('is best in the order 4, 2, 3, 1, 5', () => {
    expect(repairOrder(repairs)).toEqual([3, 1, 2, 0, 4]);
  });

  test('costs 45.0 minutes, no order of the 120 less and the worst 89.5', () => {
    const all = orders(5).map((order) => costInOrder(repairs, order));
    expect(all).toHaveLength(120);
    expect(costInOrder(repairs, repairOrder(repairs))).toBeCloseTo(45, 9);
    expect(expectedCost(Float64Array.from(probabilities), Float64Array.from(costs))).toBeCloseTo(45, 9);
    expect(Math.min(...all)).toBeCloseTo(45, 9);
    expect(Math.max(...all)).toBeCloseTo(89.5, 9);
  });

  test('costs 62.0 by probability alone and 53.25 by cost alone', () => {
    expect(
      costInOrder(
        repairs,
        by(({ probability }) => -probability),
      ),
    ).toBeCloseTo(62, 9);
    expect(
      costInOrder(
        repairs,
        by(({ cost }) => cost),
      ),
    ).toBeCloseTo(53.25, 9);
  });
});

describe('worked example B, four faults and four tests', () => {
  // Plugged filter, suction leak, weak lift pump, stuck return valve.
  const prior = [0.45, 0.25, 0.2, 0.1];
  const repairMinutes = Float64Array.of(25, 30, 90, 40);
  const gauge = [0.9, 0.15, 0.1, 0.05];
  const sight = [0.1, 0.95, 0.1, 0.05];
  const pump = [0.6, 0.5, 0.95, 0.2];
  const flow = [0.15, 0.2, 0.3, 0.95];

  test('starts from 1.814980 bits and 71.5 minutes', () => {
    expect(bits(entropy(prior))).toBeCloseTo(1.81498, 6);
    expect(expectedCost(Float64Array.from(prior), repairMinutes)).toBeCloseTo(71.5, 9);
    const repairs = prior.map((probability, index) => ({ probability, cost: repairMinutes[index] ?? 0 }));
    expect(repairOrder(repairs)).toEqual([0, 1, 3, 2]);
  });

  test.each([
    ['suction gauge', gauge, 6, 0.511003, 0.085167, -0.6625],
    ['sight tube', sight, 4, 0.48518, 0.121295, 7.5625],
    ['pump flow', pump, 12, 0.151551, 0.012629, -6.2],
    ['return flow', flow, 8, 0.185221, 0.023153, -2],
  ])('%s tells and saves what was printed', (_name, yes, minutes, gain, perMinute, saves) => {
    const told = bits(look(prior, yesOrNo(yes)).gain);
    expect(told).toBeCloseTo(gain, 6);
    expect(told / minutes).toBeCloseTo(perMinute, 6);
    expect(look(prior, yesOrNo(yes), minutes, repairMinutes).saves).toBeCloseTo(saves, 9);
  });

  test('leaves these beliefs after the sight tube, bubbles or none', () => {
    const [bubbles, none] = yesOrNo(sight).map((likelihood) => posterior(prior, likelihood));
    // Printed to four decimals.
    expect(bubbles).toEqual([0.1463, 0.7724, 0.065, 0.0163].map((share) => expect.closeTo(share, 4)));
    expect(none).toEqual([0.5848, 0.0181, 0.2599, 0.1372].map((share) => expect.closeTo(share, 4)));
  });

  test.each([
    ['sight tube', sight, 4, 0.622378, 0.155595],
    ['pump flow', pump, 12, 0.259964, 0.021664],
    ['return flow', flow, 8, 0.256829, 0.032104],
  ])('%s tells this after a suction gauge that passes', (_name, yes, minutes, gain, perMinute) => {
    const after = posterior(prior, yesOrNo(gauge)[1] ?? []);
    expect(after).toEqual([0.084507, 0.399061, 0.338028, 0.178404].map((share) => expect.closeTo(share, 6)));
    const told = bits(look(after, yesOrNo(yes)).gain);
    expect(told).toBeCloseTo(gain, 6);
    expect(told / minutes).toBeCloseTo(perMinute, 6);
  });
});

describe('closed forms', () => {
  test("a breast screening's positive result means 7.8 %", () => {
    // Gigerenzer & Hoffrage 1995, Psychological Review 102, after Eddy 1982 (from memory): 1 % have it, 80 % of those are
    // found, 9.6 % of the others are too. By hand 8 / (8 + 95.04) = 0.0776; printed 7.8 %.
    const [ill] = posterior([0.01, 0.99], [0.8, 0.096]);
    expect(ill).toBeCloseTo(8 / 103.04, 12);
    expect(Math.round((ill ?? 0) * 1000) / 10).toBe(7.8);
  });

  test('a binary symmetric channel carries ln 2 − H(e)', () => {
    // Shannon 1948. e = 0.11 is the usual example of half a bit (Cover & Thomas, from memory): 0.50 to two decimals.
    const carried = (e: number) => look([0.5, 0.5], yesOrNo([1 - e, e])).gain;
    for (const e of [0, 0.01, 0.11, 0.3, 0.5]) {
      const loss = e === 0 ? 0 : -e * Math.log(e) - (1 - e) * Math.log(1 - e);
      expect(carried(e)).toBeCloseTo(Math.LN2 - loss, 12);
    }
    expect(bits(carried(0.11))).toBeCloseTo(0.5, 2);
  });

  test('a certain test saves what the wrong repairs would have cost', () => {
    // By hand: 30 minutes each way at even odds, so 45 without the test and 30 with it.
    expect(look([0.5, 0.5], yesOrNo([1, 0]), 6, Float64Array.of(30, 30)).saves).toBeCloseTo(9, 12);
  });

  test('eight faults alike are three bits', () => {
    expect(bits(entropy(new Array(8).fill(1 / 8)))).toBeCloseTo(3, 12);
    expect(entropy([1, 0, 0])).toBe(0);
  });
});

describe('for any faults and any test', () => {
  /** Positive weights made to sum to 1. */
  const shares = (count: number) =>
    fc
      .array(fc.integer({ min: 1, max: 1000 }), { minLength: count, maxLength: count })
      .map((weights) => weights.map((weight) => weight / weights.reduce((sum, one) => sum + one, 0)));
  /** Outcome × fault: each fault's column sums to 1. */
  const likelihoods = (outcomes: number, faults: number) =>
    fc
      .array(shares(outcomes), { minLength: faults, maxLength: faults })
      .map((columns) => Array.from({ length: outcomes }, (_, at) => columns.map((column) => column[at] ?? 0)));
  const troubles = fc.integer({ min: 1, max: 6 }).chain((faults) =>
    fc.record({
      prior: shares(faults),
      test: fc.integer({ min: 2, max: 4 }).chain((outcomes) => likelihoods(outcomes, faults)),
      other: likelihoods(2, faults),
      costs: fc
        .array(fc.integer({ min: 1, max: 240 }), { minLength: faults, maxLength: faults })
        .map((costs) => Float64Array.from(costs)),
      minutes: fc.integer({ min: 1, max: 60 }),
    }),
  );
  const holds = (property: (trouble: typeof troubles extends fc.Arbitrary<infer T> ? T : never) => void) =>
    fc.assert(fc.property(troubles, property), { endOnFailure: true });
  /** What sums of some dozen rounded terms of size 1 may be off. */
  const ROUNDING = 1e-12;

  test('the gain is that of the joint distribution: H(P) + H(O) − H(P, O)', () => {
    holds(({ prior, test: rows }) => {
      // A second implementation: mutual information by the three entropies, in bits.
      const log = (share: number) => (share > 0 ? share * Math.log2(share) : 0);
      const joint = rows.flatMap((row) => row.map((chance, fault) => chance * (prior[fault] ?? 0)));
      const outcome = rows.map((row) => row.reduce((sum, chance, fault) => sum + chance * (prior[fault] ?? 0), 0));
      const of = (list: readonly number[]) => -list.reduce((sum, share) => sum + log(share), 0);
      expect(bits(look(prior, rows).gain)).toBeCloseTo(of(prior) + of(outcome) - of(joint), 11);
    });
  });

  test('the gain lies between nothing and all there is to know', () => {
    holds(({ prior, test: rows }) => {
      const gain = look(prior, rows).gain;
      expect(gain).toBeGreaterThan(-ROUNDING);
      expect(gain).toBeLessThan(entropy(prior) + ROUNDING);
    });
  });

  test('a test that reads alike under every fault tells nothing and saves nothing', () => {
    holds(({ prior, costs, minutes }) => {
      const alike = yesOrNo(prior.map(() => 0.3));
      expect(Math.abs(look(prior, alike).gain)).toBeLessThan(ROUNDING);
      // Minutes are of size 1000.
      expect(look(prior, alike, minutes, costs).saves).toBeCloseTo(-minutes, 8);
    });
  });

  test('before its own minutes no test costs anything, and each minute costs one', () => {
    holds(({ prior, test: rows, costs, minutes }) => {
      const free = look(prior, rows, 0, costs).saves;
      expect(free).toBeGreaterThan(-1e-9);
      expect(look(prior, rows, minutes, costs).saves).toBeCloseTo(free - minutes, 8);
    });
  });

  test('no order of repairs costs less than that by probability over cost', () => {
    holds(({ prior, costs }) => {
      const repairs = prior.map((probability, index) => ({ probability, cost: costs[index] ?? 0 }));
      const least = Math.min(...orders(prior.length).map((order) => costInOrder(repairs, order)));
      expect(costInOrder(repairs, repairOrder(repairs))).toBeCloseTo(least, 8);
      expect(expectedCost(Float64Array.from(prior), costs)).toBeCloseTo(least, 8);
    });
  });

  test('belief sums to 1 after an outcome, and the order of two looks does not matter', () => {
    holds(({ prior, test: rows, other }) => {
      const [one, two] = [rows[0] ?? [], other[0] ?? []];
      const there = posterior(posterior(prior, one), two);
      const back = posterior(posterior(prior, two), one);
      expect(there.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
      there.forEach((share, index) => {
        expect(share).toBeCloseTo(back[index] ?? Number.NaN, 12);
      });
    });
  });
});
