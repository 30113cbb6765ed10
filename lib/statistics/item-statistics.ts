import { type Responses, type Totals, totalsOf } from './responses';
import type { Statistic } from './statistic';

/*
 * How each item of a set worked, in the terms of classical test theory. What the figures mean for the item is said by
 * `item-flags.ts`, what was chosen by `choices.ts`, how far the whole set can be trusted by `reliability.ts`.
 */

export type NoDifficulty = 'no-answers';
export type NoDiscrimination = 'too-few' | 'item-without-spread' | 'rest-without-spread';

export interface ItemStatistics {
  /** People who answered the item. */
  people: number;
  /** Mean share of the item's maximum, 0…1: the higher, the easier. */
  difficulty: Statistic<NoDifficulty>;
  /** Corrected item–total correlation, −1…1: the item against everything else that the same people answered. */
  discrimination: Statistic<NoDiscrimination>;
  /** People with an answer to this item and to another one, over whom the correlation runs. */
  pairs: number;
}

/** Two people always correlate perfectly. */
const LEAST_PAIRS = 3;
/** Sums of squares below this share of what they could be are rounding. */
const ROUNDING = 1e-20;

/**
 * Difficulty and discrimination of each item.
 *
 * The rest of a person is the share they earned of the points on the *other* items that they answered. Where everybody
 * answered everything its correlation is that with the sum of the other items, as textbooks have it; where answers are
 * missing, nobody is taken to have failed what they did not meet.
 *
 * @source Corrected (item-excluded) point-biserial and its generalisation: Henrysson 1963, Psychometrika 28 (from memory).
 */
export function itemStatistics(responses: Responses): ItemStatistics[] {
  const sums = momentsOf(responses, totalsOf(responses));
  return Array.from(responses.maxima, (maximum, item) => {
    const people = sums.people[item] as number;
    const pairs = sums.pairs[item] as number;
    return {
      people,
      difficulty: people > 0 ? { value: (sums.points[item] as number) / (people * maximum) } : { why: 'no-answers' },
      discrimination: discriminationOf(sums, item),
      pairs,
    };
  });
}

interface Moments {
  people: Float64Array;
  points: Float64Array;
  pairs: Float64Array;
  /** Sums of squares and products around the means: of the item's share, of the rest's, of both. */
  item: Float64Array;
  rest: Float64Array;
  both: Float64Array;
}

/** One pass over the answers, with running means (Welford), so that nearly equal scores do not cancel. */
function momentsOf({ people, items, scores, maxima }: Responses, { earned, possible }: Totals): Moments {
  const zeros = () => new Float64Array(items);
  const sums = { people: zeros(), points: zeros(), pairs: zeros(), item: zeros(), rest: zeros(), both: zeros() };
  const [itemMean, restMean] = [zeros(), zeros()];
  for (let person = 0, at = 0; person < people; person++) {
    const [points, most] = [earned[person] as number, possible[person] as number];
    for (let item = 0; item < items; item++, at++) {
      const score = scores[at] as number;
      if (Number.isNaN(score)) continue;
      const maximum = maxima[item] as number;
      sums.people[item] = (sums.people[item] as number) + 1;
      sums.points[item] = (sums.points[item] as number) + score;
      const others = most - maximum;
      if (!(others > ROUNDING * most)) continue;
      const pairs = (sums.pairs[item] as number) + 1;
      const share = score / maximum;
      const rest = (points - score) / others;
      const [fromItem, fromRest] = [share - (itemMean[item] as number), rest - (restMean[item] as number)];
      const newItemMean = (itemMean[item] as number) + fromItem / pairs;
      const newRestMean = (restMean[item] as number) + fromRest / pairs;
      sums.pairs[item] = pairs;
      itemMean[item] = newItemMean;
      restMean[item] = newRestMean;
      sums.item[item] = (sums.item[item] as number) + fromItem * (share - newItemMean);
      sums.rest[item] = (sums.rest[item] as number) + fromRest * (rest - newRestMean);
      sums.both[item] = (sums.both[item] as number) + fromItem * (rest - newRestMean);
    }
  }
  return sums;
}

function discriminationOf({ pairs, item, rest, both }: Moments, index: number): Statistic<NoDiscrimination> {
  const count = pairs[index] as number;
  if (count < LEAST_PAIRS) return { why: 'too-few' };
  const [spread, restSpread] = [item[index] as number, rest[index] as number];
  if (!(spread > ROUNDING * count)) return { why: 'item-without-spread' };
  if (!(restSpread > ROUNDING * count)) return { why: 'rest-without-spread' };
  const value = (both[index] as number) / Math.sqrt(spread * restSpread);
  // Rounding must not make a correlation of nothing negative, nor one of everything more than 1.
  return { value: Math.abs(value) < 1e-12 ? 0 : Math.min(1, Math.max(-1, value)) };
}
