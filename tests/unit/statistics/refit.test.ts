import { describe, expect, test } from 'vitest';
import { type Refit, refit } from '@/lib/statistics/refit';
import { type Responses, responsesFrom } from '@/lib/statistics/responses';
import { raschAnswers } from '../../support/rasch-answers';

const design = Array.from({ length: 20 }, (_, item) => -1.5 + (3 * item) / 19);

function refitted(responses: Responses, designed: readonly number[]): Refit {
  const found = refit(responses, Float64Array.from(designed));
  if (found.why !== undefined) throw new Error(found.why);
  return found;
}

const movedOf = ({ proposals }: Refit) =>
  proposals.flatMap((proposal, item) => (proposal.why === undefined && proposal.moved ? [item] : []));

describe('a refit', () => {
  test('finds the two items that are not as designed, and no other', () => {
    const true_ = design.map((difficulty, item) => difficulty + (item === 4 ? 1.2 : item === 15 ? -1.2 : 0));
    const found = refitted(raschAnswers('two moved', 600, true_, { missing: 0.2 }), design);
    expect(movedOf(found)).toEqual([4, 15]);
    const [four] = found.proposals.slice(4);
    expect(four?.refitted).toBeGreaterThan((design[4] ?? 0) + 0.7);
  });

  test('lies on the scale of the design: the same mean, whoever the people are', () => {
    const found = refitted(raschAnswers('abler people', 800, design, { mean: 1, spread: 1.4 }), design);
    const mean = found.proposals.reduce((sum, { refitted = Number.NaN }) => sum + refitted, 0) / 20;
    expect(mean).toBeCloseTo(0, 9);
    // People one logit abler make the fit put every item one lower; the link lifts them back.
    expect(Math.abs(found.shift - 1)).toBeLessThan(0.2);
    expect(movedOf(found)).toEqual([]);
  });

  test('calls some sound item moved once in twenty refits, not once in twenty items', () => {
    // 40 refits of 20 items. By chance 2 with any moved; 7 or more once in 300 (binomial, 40 of 0.05). Item by item at 5 %
    // it would be some 26.
    const called = Array.from({ length: 40 }, (_, round) =>
      refitted(raschAnswers(`sound ${round}`, 150, design), design),
    ).filter((found) => movedOf(found).length > 0);
    expect(called.length).toBeLessThan(7);
  });

  test('has standard errors as wide as refits of new people scatter', () => {
    const found = Array.from({ length: 60 }, (_, round) => refitted(raschAnswers(`new ${round}`, 150, design), design));
    const squares = found.flatMap(({ proposals }) =>
      proposals.map((one, item) =>
        one.why === undefined ? ((one.refitted - (design[item] ?? 0)) / one.standardError) ** 2 : Number.NaN,
      ),
    );
    // 60 refits, 19 free differences of 20: the mean of the squares is 1, give or take √(2/1140) = 0.04.
    const mean = squares.reduce((sum, square) => sum + square, 0) / squares.length;
    expect(Math.abs(mean - 1)).toBeLessThan(0.15);
  });

  test('leaves out items with few answers and items that all got right, and says so', () => {
    const answers = raschAnswers('few', 100, [-1, 0, 1]);
    const rows = Array.from({ length: 100 }, (_, person) => [
      ...answers.scores.subarray(3 * person, 3 * person + 3),
      person < 29 ? person % 2 : undefined,
      1,
    ]);
    const found = refitted(responsesFrom(rows), [-1, 0, 1, 0.3, -4]);
    expect(found.linked).toBe(3);
    expect(found.proposals.slice(3)).toEqual([
      { design: 0.3, why: 'too-few-answers', people: 29 },
      { design: -4, why: 'all-right', people: 100 },
    ]);
  });

  test('is refused as a whole where fewer than three items have answers enough', () => {
    expect(refit(raschAnswers('29', 29, design), Float64Array.from(design))).toEqual({ why: 'too-few-answers' });
    const parts = responsesFrom(Array.from({ length: 40 }, () => [0.5, 1, 0]));
    expect(refit(parts, Float64Array.of(0, 0, 0))).toEqual({ why: 'not-right-or-wrong' });
  });
});
