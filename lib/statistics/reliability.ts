import type { Responses } from './responses';
import { FEW_PEOPLE, type Statistic } from './statistic';

export type NoReliability = 'too-few-items' | 'too-few-people' | 'no-spread';

/** How far the sum of a set's scores can be trusted. */
export interface Reliability {
  /** KR-20 where every item is right or wrong and worth the same, coefficient alpha otherwise: the same formula. */
  coefficient: 'kr-20' | 'alpha';
  /** At most 1. Below 0 where items run against each other. */
  alpha: Statistic<NoReliability>;
  /** Standard error of measurement of somebody's sum, SD √(1 − alpha), in points. */
  errorOfMeasurement: Statistic<NoReliability>;
  /** Alpha of the set without each item, in the items' order; of an item that nobody answered, the whole set's. */
  without: Statistic<NoReliability>[];
  /** People who answered every item that anybody answered: over these alone it runs. */
  people: number;
  /** People left out since they answered some items only. */
  leftOut: number;
  /** Items that anybody answered. */
  items: number;
  /** So few people that another group may well give another figure. */
  few: boolean;
}

/**
 * Kuder–Richardson formula 20, or Cronbach's alpha:
 *
 *     alpha = k / (k − 1) · (1 − Σ var(item) / var(sum))
 *
 * with the same divisor, n − 1, in every variance. Whoever left an item out is left out here: an answer that is missing is
 * not a wrong one. Sets that were drawn for each person apart have nobody who answered everything, and no alpha.
 *
 * @source Kuder & Richardson 1937, Psychometrika 2; Cronbach 1951, Psychometrika 16 (both from memory).
 */
export function reliabilityOf(responses: Responses): Reliability {
  const items = answeredItems(responses);
  const people = completePeople(responses, items);
  const spread = spreadOf(responses, items, people);
  const k = items.length;
  const alpha = alphaFrom(k, people.length, sum(spread.variances), spread.total);
  const column = new Map(items.map((item, at) => [item, at]));
  return {
    coefficient: isDichotomous(responses, items, people) ? 'kr-20' : 'alpha',
    alpha,
    errorOfMeasurement:
      alpha.value === undefined ? alpha : { value: Math.sqrt(Math.max(0, spread.total * (1 - alpha.value))) },
    without: Array.from(responses.maxima, (_, item) => {
      const at = column.get(item);
      return at === undefined ? alpha : alphaWithout(spread, at, people.length);
    }),
    people: people.length,
    leftOut: responses.people - people.length,
    items: k,
    few: people.length < FEW_PEOPLE,
  };
}

function answeredItems({ people, items, scores }: Responses): number[] {
  const answered = new Uint8Array(items);
  for (let person = 0, at = 0; person < people; person++)
    for (let item = 0; item < items; item++, at++) if (!Number.isNaN(scores[at])) answered[item] = 1;
  return [...answered.keys()].filter((item) => answered[item]);
}

function completePeople({ people, items, scores }: Responses, needed: readonly number[]): number[] {
  return Array.from({ length: people }, (_, person) => person).filter((person) =>
    needed.every((item) => !Number.isNaN(scores[person * items + item])),
  );
}

function isDichotomous({ items, scores, maxima }: Responses, used: readonly number[], people: readonly number[]) {
  const worth = maxima[used[0] ?? 0];
  return used.every(
    (item) =>
      maxima[item] === worth && people.every((person) => [0, worth].includes(scores[person * items + item] as number)),
  );
}

interface Spread {
  /** Sample variance of each item's score, its covariance with the sum, and the sample variance of the sum. */
  variances: Float64Array;
  withSum: Float64Array;
  total: number;
}

function spreadOf({ items, scores }: Responses, used: readonly number[], people: readonly number[]): Spread {
  const means = Float64Array.from(used, (item) => meanOf(people, (person) => scores[person * items + item] as number));
  const [variances, withSum] = [new Float64Array(used.length), new Float64Array(used.length)];
  const apart = new Float64Array(used.length);
  const per = 1 / (people.length - 1);
  let total = 0;
  for (const person of people) {
    let sumApart = 0;
    for (const [at, item] of used.entries()) {
      const from = (scores[person * items + item] as number) - (means[at] as number);
      apart[at] = from;
      sumApart += from;
    }
    total += per * sumApart ** 2;
    for (let at = 0; at < apart.length; at++) {
      const from = apart[at] as number;
      variances[at] = (variances[at] as number) + per * from ** 2;
      withSum[at] = (withSum[at] as number) + per * from * sumApart;
    }
  }
  return { variances, withSum, total };
}

function alphaWithout({ variances, withSum, total }: Spread, at: number, people: number): Statistic<NoReliability> {
  const variance = variances[at] as number;
  const rest = total + variance - 2 * (withSum[at] as number);
  return alphaFrom(variances.length - 1, people, sum(variances) - variance, rest);
}

/** Variances below this share of the items' own are rounding. */
const ROUNDING = 1e-12;

function alphaFrom(items: number, people: number, ofItems: number, ofSum: number): Statistic<NoReliability> {
  if (items < 2) return { why: 'too-few-items' };
  if (people < 2) return { why: 'too-few-people' };
  if (!(ofSum > ROUNDING * Math.max(ofItems, ROUNDING))) return { why: 'no-spread' };
  return { value: (items / (items - 1)) * (1 - ofItems / ofSum) };
}

function sum(values: Float64Array): number {
  return values.reduce((total, value) => total + value, 0);
}

function meanOf(people: readonly number[], of: (person: number) => number): number {
  return people.reduce((total, person) => total + of(person), 0) / people.length;
}
