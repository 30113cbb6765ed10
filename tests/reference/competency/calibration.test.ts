import { describe, expect, test } from 'vitest';
import { drawScore } from '@/lib/competency/characteristics';
import { chanceAtOrAbove, intervalOf, meanOf } from '@/lib/competency/posterior';
import { posteriorAt, tallyOf } from '@/lib/competency/tally';
import type { TaskModel } from '@/lib/competency/task-model';
import { type RandomStream, randomStream } from '@/lib/random';
import { choice, steps } from '../../support/task-models';

/*
 * Analytic: where abilities are spread as the prior says and answers come as the models say, a 90 % interval holds 90 % of
 * the people, and of those given a chance of 0.95 to be above a cut, 95 % are. True difficulties are drawn around the
 * designed ones and not told.
 */
const PEOPLE = 3000;
const CUT = 0.5;
const SPREAD = 0.5;

interface Person {
  ability: number;
  posterior: Float64Array;
}

const people = Array.from({ length: PEOPLE }, (_, at) => simulated(randomStream(`${at}`, 'calibration')));

/** Six cases of four points and six questions with four choices. */
function simulated(random: RandomStream): Person {
  const ability = normal(random);
  const responses = Array.from({ length: 12 }, (_, at) => {
    const designed = random.between(-1.5, 1.5);
    const isCase = at % 2 === 0;
    const truth = modelOf(isCase, designed + SPREAD * normal(random), 0);
    return { at: 0, model: modelOf(isCase, designed, SPREAD), score: drawScore(truth, ability, random), weight: 1 };
  });
  return { ability, posterior: posteriorAt(tallyOf(responses, null), 0, null) };
}

function modelOf(isCase: boolean, difficulty: number, spread: number): TaskModel {
  if (!isCase) return choice(difficulty, { floor: 0.25, spread });
  return { ...steps(...[-1.5, -0.5, 0.5, 1.5].map((apart) => difficulty + apart)), spread };
}

function normal(random: RandomStream): number {
  return Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next());
}

/** Four standard errors of a share. */
const allowed = (share: number, of: number) => 4 * Math.sqrt((share * (1 - share)) / of);

test.each([0.5, 0.8, 0.9, 0.95])('an interval of %d holds that share of the people', (share) => {
  const held = people.filter(({ ability, posterior }) => {
    const { low, high } = intervalOf(posterior, share);
    return ability >= low && ability <= high;
  });
  expect(Math.abs(held.length / PEOPLE - share)).toBeLessThan(allowed(share, PEOPLE));
});

describe('of people with a chance of being at the cut or above', () => {
  test.each([
    [0, 0.05],
    [0.05, 0.2],
    [0.2, 0.5],
    [0.5, 0.8],
    [0.8, 0.95],
    [0.95, 1],
  ])('between %d and %d, as many are', (least, most) => {
    const chances = people.map(({ ability, posterior }) => ({ ability, chance: chanceAtOrAbove(posterior, CUT) }));
    const within = chances.filter(({ chance }) => chance >= least && chance < most);
    const expected = within.reduce((sum, { chance }) => sum + chance, 0) / within.length;
    const above = within.filter(({ ability }) => ability >= CUT).length / within.length;
    expect(within.length).toBeGreaterThan(100);
    expect(Math.abs(above - expected)).toBeLessThan(allowed(expected, within.length));
  });
});

test('the means go with the abilities', () => {
  // Of a mean that explains all but the posterior's own spread: the correlation is √(1 − mean variance), 0.9 for a spread of
  // 0.43.
  const means = people.map(({ posterior }) => meanOf(posterior));
  expect(
    correlation(
      means,
      people.map(({ ability }) => ability),
    ),
  ).toBeGreaterThan(0.85);
});

function correlation(one: readonly number[], other: readonly number[]): number {
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [a, b] = [mean(one), mean(other)];
  const product = mean(one.map((value, at) => (value - a) * ((other[at] as number) - b)));
  return product / Math.sqrt(mean(one.map((value) => (value - a) ** 2)) * mean(other.map((value) => (value - b) ** 2)));
}
