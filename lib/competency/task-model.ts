import { z } from 'zod';
import { GRID, GRID_LOWEST, GRID_STEP, type OnGrid } from './grid';
import { choiceLaw, type Law, momentsAt, type Part, sharesOnGrid, stepsLaw, weightOfScore } from './task-law';

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
  const { rate, floor, parts } = lawOf(model);
  const u = Math.exp(rate * theta);
  const share = averaged(
    parts,
    ({ weights }) => (weightOfScore(weights, score) * u ** score) / momentsAt(weights, u).total,
  );
  return score === 0 ? (1 - floor) * share : floor + (1 - floor) * share;
}

/** Points that somebody earns on the average, and how fast they rise with ability, in points a logit. */
export function expectedScore(model: TaskModel, theta: number): { points: number; slope: number } {
  const { rate, floor, parts } = lawOf(model);
  const u = Math.exp(rate * theta);
  const mean = averaged(parts, ({ weights }) => momentsAt(weights, u).mean);
  const variance = averaged(parts, ({ weights }) => momentsAt(weights, u).variance);
  return { points: floor + (1 - floor) * mean, slope: (1 - floor) * rate * variance };
}

/**
 * What a score tells of an ability there: Fisher's information, per square logit.
 *
 * Where the steps of a task are uncertain, nearly: as of a measurement to whose error the uncertainty adds. Within 8 % for
 * steps a logit apart and a spread of 0.5.
 */
export function information(model: TaskModel, theta: number): number {
  const law = tellingLaw(model);
  return informationAt(law, Math.exp(law.rate * theta));
}

/** Information averaged over shares of the grid that sum to 1. */
export function meanInformation(model: TaskModel, shares: OnGrid): number {
  const law = tellingLaw(model);
  const growth = Math.exp(law.rate * GRID_STEP);
  let [u, sum] = [Math.exp(law.rate * GRID_LOWEST), 0];
  for (let at = 0; at < shares.length; at++, u *= growth) {
    const share = shares[at] as number;
    if (share > NEGLIGIBLE) sum += share * informationAt(law, u);
  }
  return sum;
}

/** Share of a point of the grid: most of the grid has less once a few tasks were answered. */
const NEGLIGIBLE = 1e-9;

/** Logarithm of the chance of a score at each ability of the grid. */
export function logChances(model: TaskModel, score: number): OnGrid {
  const logs = new Float64Array(GRID.length);
  addLogChances(logs, { model, score }, 1);
  return logs;
}

/** Adds weight · log chance of a score to what is there already: the one step that everything else repeats. */
export function addLogChances(
  logs: OnGrid,
  { model, score }: { model: TaskModel; score: number },
  weight: number,
): void {
  const law = lawOf(model);
  const shares = sharesOnGrid(law, score);
  if (law.floor > 0 && score > 0) addGuessed(logs, shares, law, weight);
  else addLine(logs, shares, { start: Math.log1p(-law.floor), slope: score * law.rate }, weight);
}

function lawOf(model: TaskModel): Law {
  return model.kind === 'choice' ? choiceLaw(model) : stepsLaw(model.steps, model.spread);
}

function averaged(parts: readonly Part[], of: (part: Part) => number): number {
  return parts.reduce((sum, part) => sum + part.share * of(part), 0);
}

/** The log of a power of u is a straight line in ability. */
function addLine(logs: OnGrid, shares: OnGrid, { start, slope }: { start: number; slope: number }, weight: number) {
  const [first, rise] = [start + slope * GRID_LOWEST, slope * GRID_STEP];
  for (let at = 0; at < logs.length; at++)
    logs[at] = (logs[at] as number) + weight * (first + at * rise + Math.log(shares[at] as number));
}

/** Right, by knowing or by guessing. */
function addGuessed(logs: OnGrid, shares: OnGrid, { rate, floor }: Law, weight: number): void {
  const growth = Math.exp(rate * GRID_STEP);
  let knowing = (1 - floor) * Math.exp(rate * GRID_LOWEST);
  for (let at = 0; at < logs.length; at++, knowing *= growth)
    logs[at] = (logs[at] as number) + weight * Math.log(floor + knowing * (shares[at] as number));
}

/** A law of one part, and what the uncertainty of its steps adds to the error of a measurement, square logits. */
interface TellingLaw {
  rate: number;
  floor: number;
  weights: readonly number[];
  noise: number;
}

function tellingLaw(model: TaskModel): TellingLaw {
  const { rate, floor, parts } = model.kind === 'choice' ? choiceLaw(model) : stepsLaw(model.steps, 0);
  return { rate, floor, weights: parts[0]?.weights ?? [], noise: model.kind === 'choice' ? 0 : model.spread ** 2 };
}

function informationAt({ rate, floor, weights, noise }: TellingLaw, u: number): number {
  const told =
    weights.length === 2
      ? rightOrWrong(rate, floor, (weights[1] as number) * u)
      : rate ** 2 * momentsAt(weights, u).variance;
  return told / (1 + noise * told);
}

function rightOrWrong(rate: number, floor: number, odds: number): number {
  const knows = odds / (1 + odds);
  const right = floor + (1 - floor) * knows;
  return (rate ** 2 * knows ** 2 * (1 - right)) / right;
}
