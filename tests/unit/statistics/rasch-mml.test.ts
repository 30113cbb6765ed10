import { describe, expect, test } from 'vitest';
import { type RaschFit, raschFit } from '@/lib/statistics/rasch-mml';
import { type Responses, responsesFrom } from '@/lib/statistics/responses';
import { raschAnswers } from '../../support/rasch-answers';

function fitted(responses: Responses, spread?: number): RaschFit {
  const found = raschFit(responses, spread);
  if (found.why !== undefined) throw new Error(found.why);
  return found;
}

const difficulties = (found: RaschFit) => found.items.map(({ difficulty }) => difficulty ?? Number.NaN);

/** The likelihood as it is defined: each person's answers, abilities averaged by Simpson's rule over ±8. */
function logLikelihood({ people, items, scores }: Responses, b: readonly number[], spread: number): number {
  const steps = 320;
  let log = 0;
  for (let person = 0; person < people; person++) {
    let sum = 0;
    for (let step = 0; step <= steps; step++) {
      const z = -8 + (16 * step) / steps;
      const weight = step === 0 || step === steps ? 1 : step % 2 ? 4 : 2;
      let chance = Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
      for (let item = 0; item < items; item++) {
        const score = scores[person * items + item] as number;
        const right = 1 / (1 + Math.exp((b[item] ?? 0) - spread * z));
        if (!Number.isNaN(score)) chance *= score > 0 ? right : 1 - right;
      }
      sum += (weight * chance * (16 / steps)) / 3;
    }
    log += Math.log(sum);
  }
  return log;
}

describe('with answers missing here and there', () => {
  const responses = raschAnswers('holes', 150, [-1, 0, 0.5, 1.5], { spread: 1.3, missing: 0.3 });
  const found = fitted(responses);
  const top = [...difficulties(found), found.spread];
  const logAt = (parameters: readonly number[]) =>
    logLikelihood(responses, parameters.slice(0, -1), parameters.at(-1) ?? 1);
  const moved = (...moves: [at: number, by: number][]) =>
    top.map((value, at) => value + moves.reduce((sum, [where, by]) => sum + (where === at ? by : 0), 0));

  test('the likelihood is that of the definition', () => {
    expect(found.logLikelihood).toBeCloseTo(logAt(top), 8);
  });

  test('every slope of it is 0 there', () => {
    for (const at of top.keys())
      expect((logAt(moved([at, 1e-4])) - logAt(moved([at, -1e-4]))) / 2e-4).toBeCloseTo(0, 5);
  });

  test('its curvature times the covariances is one', () => {
    const step = 1e-3;
    const curvature = (one: number, other: number) =>
      (logAt(moved([one, step], [other, step])) -
        logAt(moved([one, step], [other, -step])) -
        logAt(moved([one, -step], [other, step])) +
        logAt(moved([one, -step], [other, -step]))) /
      (-4 * step * step);
    const size = top.length;
    for (const row of top.keys())
      for (const column of top.keys()) {
        const product = [...top.keys()].reduce(
          (sum, at) => sum + curvature(row, at) * (found.covariance[at * size + column] ?? 0),
          0,
        );
        expect(product).toBeCloseTo(row === column ? 1 : 0, 3);
      }
  });
});

test('difficulties that answers were drawn from come back within their standard errors', () => {
  const drawn = Array.from({ length: 24 }, (_, item) => -2 + (4 * item) / 23);
  const found = fitted(raschAnswers('come back', 1500, drawn, { spread: 1.2, missing: 0.4 }));
  const apart = found.items.map((item, at) =>
    item.why === undefined ? (item.difficulty - (drawn[at] ?? 0)) / item.standardError : Number.NaN,
  );
  // Seeded: the largest of 24 normal numbers is above 3.5 once in ninety draws.
  expect(Math.max(...apart.map(Math.abs))).toBeLessThan(3.5);
  expect(Math.abs(found.spread - 1.2)).toBeLessThan(3.5 * (found.spreadError ?? 0));
});

describe('no difficulty', () => {
  const answers = raschAnswers('none', 200, [-0.5, 0, 0.5]);
  const rows = Array.from({ length: 200 }, (_, person) => [...answers.scores.subarray(3 * person, 3 * person + 3)]);

  test('of items that nobody answered, or all alike; the others have theirs as without them', () => {
    const wider = fitted(responsesFrom(rows.map((row) => [1, ...row, 0, undefined])));
    expect(wider.fitted).toEqual([1, 2, 3]);
    expect(wider.items.map(({ why }) => why)).toEqual([
      'all-right',
      undefined,
      undefined,
      undefined,
      'all-wrong',
      'no-answers',
    ]);
    const alone = difficulties(fitted(answers));
    expect(difficulties(wider).slice(1, 4)).toEqual(alone.map((difficulty) => expect.closeTo(difficulty, 9)));
  });

  test('from answers that are right in part', () => {
    expect(raschFit(responsesFrom([[0.5, 1, 0]]))).toEqual({ why: 'not-right-or-wrong' });
  });

  test('from two items, unless the spread is given', () => {
    const two = responsesFrom(rows.map((row) => row.slice(0, 2)));
    expect(raschFit(two)).toEqual({ why: 'too-few-items' });
    expect(fitted(two, 1).fitted).toEqual([0, 1]);
    expect(raschFit(responsesFrom([]), 1)).toEqual({ why: 'too-few-items' });
  });

  test('where the items share nothing', () => {
    // Every pattern of three once: independent by construction, so that no spread explains it best.
    const every = Array.from({ length: 8 }, (_, pattern) => [pattern & 1, (pattern >> 1) & 1, pattern >> 2]);
    expect(raschFit(responsesFrom(every))).toEqual({ why: 'no-spread' });
  });
});

test('a single item with a given spread has the difficulty that averages to its share', () => {
  // Derived: the mean of 1 / (1 + exp(b − z)) over normal z is the share of right answers, 3 of 4; by Simpson's rule here.
  const [b = Number.NaN] = difficulties(fitted(responsesFrom([[1], [1], [0], [1]]), 1));
  expect(Math.exp(logLikelihood(responsesFrom([[1]]), [b], 1))).toBeCloseTo(0.75, 8);
});
