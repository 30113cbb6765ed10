import { randomStream } from '@/lib/random';
import { itemStatistics } from '@/lib/statistics/item-statistics';
import { reliabilityOf } from '@/lib/statistics/reliability';
import { type Responses, responsesFrom } from '@/lib/statistics/responses';
import { type Spread, spreadOf, timed } from './spread';

const PEOPLE = 500;
const ITEMS = 400;
const ROUNDS = 15;

export interface ItemStatisticsFigures {
  /** Milliseconds over 200,000 responses, a tenth of them missing: difficulty and discrimination of each item. */
  items: Spread;
  /** KR-20 of the set and without each item; nothing missing. */
  reliability: Spread;
  /** The same item figures as a textbook would have them, lists and one pass a figure. */
  plain: Spread;
}

/** Ours and the plain way alternate, so that whatever else the machine does hits both. */
export function measureItemStatistics(): ItemStatisticsFigures {
  const [holes, whole] = [drawnResponses(0.1), drawnResponses(0)];
  assertSame(holes);
  const times = { items: [] as number[], reliability: [] as number[], plain: [] as number[] };
  for (let round = -3; round < ROUNDS; round++) {
    const plain = timed(() => plainItemStatistics(holes));
    const items = timed(() => itemStatistics(holes));
    const reliability = timed(() => reliabilityOf(whole));
    // The first rounds warm all of them up.
    if (round < 0) continue;
    times.items.push(items);
    times.reliability.push(reliability);
    times.plain.push(plain);
  }
  return { items: spreadOf(times.items), reliability: spreadOf(times.reliability), plain: spreadOf(times.plain) };
}

function drawnResponses(missing: number): Responses {
  const random = randomStream('item statistics', `${missing}`);
  const difficulties = Array.from({ length: ITEMS }, () => random.between(-2, 2));
  return responsesFrom(
    Array.from({ length: PEOPLE }, () => {
      const ability = random.between(-2, 2);
      return difficulties.map((difficulty) => {
        const chance = 1 / (1 + Math.exp(difficulty - ability));
        if (random.next() < missing) return undefined;
        return random.next() < chance ? 1 : 0;
      });
    }),
  );
}

function plainItemStatistics({
  people,
  items,
  scores,
  maxima,
}: Responses): { difficulty: number; discrimination: number }[] {
  const rows = Array.from({ length: people }, (_, person) => [
    ...scores.subarray(person * items, (person + 1) * items),
  ]);
  const answered = rows.map((row) => row.map((score, item) => ({ score, item })).filter(({ score }) => score >= 0));
  const earned = answered.map((row) => row.reduce((sum, { score }) => sum + score, 0));
  const possible = answered.map((row) => row.reduce((sum, { item }) => sum + (maxima[item] as number), 0));
  return Array.from(maxima, (maximum, item) => {
    const mine = rows.map((row, person) => ({ score: row[item] as number, person })).filter(({ score }) => score >= 0);
    const own = mine.map(({ score }) => score / maximum);
    const rest = mine.map(
      ({ score, person }) => ((earned[person] as number) - score) / ((possible[person] as number) - maximum),
    );
    return { difficulty: mean(own), discrimination: pearson(own, rest) };
  });
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function pearson(one: readonly number[], other: readonly number[]): number {
  const [first, second] = [mean(one), mean(other)];
  const product = mean(one.map((value, at) => (value - first) * ((other[at] as number) - second)));
  const spread = mean(one.map((value) => (value - first) ** 2)) * mean(other.map((value) => (value - second) ** 2));
  return product / Math.sqrt(spread);
}

/** A race counts only if both find the same. */
function assertSame(responses: Responses): void {
  const ours = itemStatistics(responses);
  for (const [item, { difficulty, discrimination }] of plainItemStatistics(responses).entries()) {
    const apart = [
      difficulty - (ours[item]?.difficulty.value ?? Number.NaN),
      discrimination - (ours[item]?.discrimination.value ?? Number.NaN),
    ];
    if (!apart.every((one) => Math.abs(one) < 1e-9)) throw new Error(`Item ${item} differs by ${apart}`);
  }
}
