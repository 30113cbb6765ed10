import { z } from 'zod';
import { GRID, GRID_STEP, type OnGrid } from './grid';

/*
 * How likely each score on a task is for somebody of an ability, and what a score tells of them.
 */

/** Wide enough for any task; narrow enough that the powers below stay within the range of numbers. */
const logits = z.number().min(-20).max(20);
/** Standard deviation of the true difficulty around the designed one, as far as it is not known, logits. */
const spread = z.number().min(0).max(3);

/**
 * How the scores of a task depend on ability, logits.
 *
 * @source Rasch 1960; Birnbaum 1968; Masters 1982, Psychometrika 47 (all from memory).
 */
export const taskModelSchema = z.discriminatedUnion('kind', [
  /** Right (1) or wrong (0); `floor` is the chance of a right answer by somebody who knows nothing. */
  z.strictObject({
    kind: z.literal('choice'),
    difficulty: logits,
    /** 1 where left out: few answers do not tell slopes apart. */
    slope: z.number().positive().max(5).optional(),
    floor: z.number().min(0).max(0.99),
    spread,
  }),
  /** Partial credit: score 0…steps.length. A step is the ability at which a score is as likely as the one below. */
  z.strictObject({ kind: z.literal('steps'), steps: z.array(logits).min(1).max(12).readonly(), spread }),
]);

export type TaskModel = z.infer<typeof taskModelSchema>;

export function highestScore(model: TaskModel): number {
  return model.kind === 'choice' ? 1 : model.steps.length;
}

/**
 * Chance of a score.
 *
 * @param theta  Ability, −12…12 logits.
 */
export function chance(model: TaskModel, score: number, theta: number): number {
  const law = lawOf(model);
  const all = momentsAt(law.weights, Math.exp(law.rate * theta)).total;
  const share = Math.exp(logWeight(law, score) + score * law.rate * theta) / all;
  return score === 0 ? (1 - law.floor) * share : law.floor + (1 - law.floor) * share;
}

/** Points that somebody earns on the average, and how fast they rise with ability, in points a logit. */
export function expectedScore(model: TaskModel, theta: number): { points: number; slope: number } {
  const { rate, weights, floor } = lawOf(model);
  const { mean, variance } = momentsAt(weights, Math.exp(rate * theta));
  return { points: floor + (1 - floor) * mean, slope: (1 - floor) * rate * variance };
}

/** What a score tells of an ability there: Fisher's information, per square logit. */
export function information(model: TaskModel, theta: number): number {
  const law = lawOf(model);
  return informationAt(law, Math.exp(law.rate * theta));
}

/** Information averaged over shares of the grid that sum to 1. */
export function meanInformation(model: TaskModel, shares: OnGrid): number {
  const law = lawOf(model);
  const growth = Math.exp(law.rate * GRID_STEP);
  let [u, sum] = [Math.exp(law.rate * LOWEST), 0];
  for (let at = 0; at < shares.length; at++, u *= growth) sum += (shares[at] as number) * informationAt(law, u);
  return sum;
}

/** Logarithm of the chance of a score at each ability of the grid. */
export function logChances(model: TaskModel, score: number): OnGrid {
  const logs = new Float64Array(GRID.length);
  addLogChances(logs, { model, score }, 1);
  return logs;
}

/** Adds weight · log chance of a score to what is there already: the one step that everything else repeats. */
export function addLogChances(logs: OnGrid, scored: { model: TaskModel; score: number }, weight: number): void {
  const law = lawOf(scored.model);
  const constant = logWeight(law, scored.score);
  if (law.floor > 0 && scored.score > 0) addLogGuessed(logs, law, weight);
  else addLogShares(logs, law, { constant: constant + Math.log1p(-law.floor), slope: scored.score * law.rate }, weight);
}

const LOWEST = GRID[0] as number;

/**
 * Both kinds are one law: with u = exp(rate · ability), the chance of score k is weight[k] · u^k over the sum of all of these, and
 * above the floor where there is one. Along the grid u grows by the same factor each time, so that no power is worked out again.
 */
interface Law {
  rate: number;
  logWeights: readonly number[];
  weights: readonly number[];
  floor: number;
}

function lawOf(model: TaskModel): Law {
  if (model.kind === 'choice') return law([model.difficulty], model.slope ?? 1, model.spread, model.floor);
  return law(model.steps, 1, model.spread, 0);
}

/**
 * A difficulty that is not known for certain flattens the curve: the logistic curve averaged over a normal difficulty is nearly
 * a logistic curve again, its slope times 1 / √(1 + π slope² spread² / 8).
 */
function law(steps: readonly number[], slope: number, spread: number, floor: number): Law {
  const rate = slope / Math.sqrt(1 + (Math.PI * slope ** 2 * spread ** 2) / 8);
  const [logWeights, weights] = [[0], [1]];
  let sum = 0;
  for (const step of steps) {
    sum -= rate * step;
    logWeights.push(sum);
    weights.push(Math.exp(sum));
  }
  return { rate, logWeights, weights, floor };
}

function logWeight({ logWeights }: Law, score: number): number {
  const weight = logWeights[score];
  if (weight === undefined) throw new RangeError(`No score ${score} on a task of 0 to ${logWeights.length - 1} points`);
  return weight;
}

/** The log of a share is a straight line in ability less the log of the sum, a polynomial in u. */
function addLogShares(logs: OnGrid, { rate, weights }: Law, line: { constant: number; slope: number }, weight: number) {
  const growth = Math.exp(rate * GRID_STEP);
  const [start, rise] = [line.constant + line.slope * LOWEST, line.slope * GRID_STEP];
  const highest = weights.length - 1;
  let u = Math.exp(rate * LOWEST);
  for (let at = 0; at < logs.length; at++, u *= growth) {
    let sum = weights[highest] as number;
    for (let k = highest - 1; k >= 0; k--) sum = sum * u + (weights[k] as number);
    logs[at] = (logs[at] as number) + weight * (start + at * rise - Math.log(sum));
  }
}

/** Right, by knowing or by guessing. */
function addLogGuessed(logs: OnGrid, law: Law, weight: number): void {
  const { rate, weights, floor } = law;
  const growth = Math.exp(rate * GRID_STEP);
  let odds = (weights[1] as number) * Math.exp(law.rate * LOWEST);
  for (let at = 0; at < logs.length; at++, odds *= growth)
    logs[at] = (logs[at] as number) + weight * Math.log((floor + odds) / (1 + odds));
}

function momentsAt(weights: readonly number[], u: number): { total: number; mean: number; variance: number } {
  let [total, first, second] = [0, 0, 0];
  for (let k = 0, power = 1; k < weights.length; k++, power *= u) {
    const share = (weights[k] as number) * power;
    total += share;
    first += k * share;
    second += k * k * share;
  }
  const mean = first / total;
  return { total, mean, variance: Math.max(0, second / total - mean ** 2) };
}

function informationAt({ rate, weights, floor }: Law, u: number): number {
  if (weights.length > 2) return rate ** 2 * momentsAt(weights, u).variance;
  const odds = (weights[1] as number) * u;
  const knows = odds / (1 + odds);
  const right = floor + (1 - floor) * knows;
  return (rate ** 2 * knows ** 2 * (1 - right)) / right;
}
