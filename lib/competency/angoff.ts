import { GRID_LOWEST } from './grid';
import { expectedScore, type TaskModel } from './task-model';

/*
 * The cut as judges see it: each says of each task how many points somebody who is only just competent earns on the average,
 * and the sum over tasks is the cut. It is carried to the scale of ability, so that it holds for whichever tasks somebody is
 * given.
 */

/** What the judges said, in points of the tasks that they judged. */
export interface RawCut {
  /** Mean of the judges' sums. */
  points: number;
  /** Standard deviation of the judges' sums over √judges; undefined with one judge. */
  standardError: number | undefined;
  /** By judge. */
  sums: number[];
  /** By task. */
  means: number[];
}

/**
 * The raw cut.
 *
 * @param ratings  A row a judge, each with a rating of every task, in points.
 * @throws RangeError where there is no judge or the rows differ in length.
 * @source Angoff 1971, footnote (from memory).
 */
export function rawCut(ratings: readonly (readonly number[])[]): RawCut {
  const tasks = ratings[0]?.length;
  if (tasks === undefined || ratings.some((row) => row.length !== tasks))
    throw new RangeError('Every judge rates every task');
  const sums = ratings.map(sum);
  const points = sum(sums) / sums.length;
  const squares = sum(sums.map((one) => (one - points) ** 2));
  return {
    points,
    standardError: sums.length > 1 ? Math.sqrt(squares / (sums.length - 1) / sums.length) : undefined,
    sums,
    means: Array.from({ length: tasks }, (_, task) => sum(ratings.map((row) => row[task] as number)) / sums.length),
  };
}

/** A cut on the scale of ability, or the code that says why there is none: it lies where nobody is. */
export type AbilityCut =
  | { theta: number; standardError: number | undefined; why?: undefined }
  | { theta?: undefined; standardError?: undefined; why: 'below-scale' | 'above-scale' };

/**
 * The ability that earns the cut on the average, by the curve of the expected sum over ability; the standard error in points,
 * divided by the slope of that curve, is the standard error in logits.
 *
 * @param models  Of the tasks that were judged.
 */
export function cutOnScale(
  models: readonly TaskModel[],
  { points, standardError }: Pick<RawCut, 'points' | 'standardError'>,
): AbilityCut {
  let [low, high] = [GRID_LOWEST, -GRID_LOWEST];
  if (points < expectedSum(models, low).points) return { why: 'below-scale' };
  if (points > expectedSum(models, high).points) return { why: 'above-scale' };
  while (high - low > CLOSE) {
    const middle = (low + high) / 2;
    if (expectedSum(models, middle).points < points) low = middle;
    else high = middle;
  }
  const theta = (low + high) / 2;
  const { slope } = expectedSum(models, theta);
  return { theta, standardError: standardError === undefined ? undefined : standardError / slope };
}

/** Logits. */
const CLOSE = 1e-12;

function expectedSum(models: readonly TaskModel[], theta: number): { points: number; slope: number } {
  const each = models.map((model) => expectedScore(model, theta));
  return { points: sum(each.map(({ points }) => points)), slope: sum(each.map(({ slope }) => slope)) };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
