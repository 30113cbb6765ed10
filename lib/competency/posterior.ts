import { GRID, GRID_LOWEST, GRID_STEP, type OnGrid } from './grid';
import { meanInformation, type TaskModel } from './task-model';

/** What is supposed of an ability before anything was answered: logarithm of its density, up to a constant. */
export interface Prior {
  readonly log: OnGrid;
}

/**
 * How likely each ability of the grid is; sums to 1. Between its points the density is drawn straight, and falls to 0 one
 * step beyond the ends, so that chances, intervals and cuts agree with each other and move without jumps.
 */
export type Posterior = OnGrid;

/** Normal around a mean, in logits. */
export function priorOf(mean: number, sd: number): Prior {
  return { log: GRID.map((theta) => -0.5 * ((theta - mean) / sd) ** 2) };
}

/** Somebody of whom nothing is known; whoever decides about a person starts from this one, whatever group they belong to. */
export const neutralPrior: Prior = priorOf(0, 1);

/**
 * Bayes' rule, in logarithms: any number of answers stays within the range of numbers.
 *
 * @param logLikelihood  Sum of log chances; zeros where nothing was answered.
 */
export function posteriorFrom(prior: Prior, logLikelihood: OnGrid): Posterior {
  const { log } = prior;
  const shares = new Float64Array(log.length);
  let most = Number.NEGATIVE_INFINITY;
  for (let at = 0; at < shares.length; at++) {
    const here = (log[at] as number) + (logLikelihood[at] as number);
    shares[at] = here;
    if (here > most) most = here;
  }
  let total = 0;
  for (let at = 0; at < shares.length; at++) total += shares[at] = Math.exp((shares[at] as number) - most);
  for (let at = 0; at < shares.length; at++) shares[at] = (shares[at] as number) / total;
  return shares;
}

/** Mean of the abilities, logits. */
export function meanOf(posterior: Posterior): number {
  let mean = 0;
  for (let at = 0; at < GRID.length; at++) mean += (posterior[at] as number) * (GRID[at] as number);
  return mean;
}

/** Standard deviation of the abilities, logits. */
export function spreadOf(posterior: Posterior): number {
  const mean = meanOf(posterior);
  let square = 0;
  for (let at = 0; at < GRID.length; at++) square += (posterior[at] as number) * ((GRID[at] as number) - mean) ** 2;
  return Math.sqrt(square);
}

/**
 * Chance that the ability is at a cut or above, 0…1. A point that lies on the cut counts half; in between it moves smoothly.
 */
export function chanceAtOrAbove(posterior: Posterior, cut: number): number {
  const place = (cut - GRID_LOWEST) / GRID_STEP;
  const below = Math.floor(place);
  if (below < -1) return 1;
  if (below >= GRID.length) return 0;
  let above = 0;
  for (let at = GRID.length - 1; at > below; at--) above += posterior[at] as number;
  const [here, next] = [posterior[below] ?? 0, posterior[below + 1] ?? 0];
  return above + here / 2 - areaTo(place - below, here, next);
}

/** The middle of the abilities that holds a share of them, as much left out below as above; logits. */
export function intervalOf(posterior: Posterior, share: number): { low: number; high: number } {
  const outside = (1 - share) / 2;
  return { low: quantile(posterior, outside), high: quantile(posterior, 1 - outside) };
}

/** What a task is expected to tell of somebody, per square logit. */
export function expectedInformation(posterior: Posterior, model: TaskModel): number {
  return meanInformation(model, posterior);
}

/** Area under the straight line from one point's share to the next one's, up to a part (0…1) of the step. */
function areaTo(part: number, here: number, next: number): number {
  return part * here + (part ** 2 * (next - here)) / 2;
}

function quantile(posterior: Posterior, share: number): number {
  let [below, here] = [0, 0];
  for (let at = 0; at <= GRID.length; at++) {
    const next = posterior[at] ?? 0;
    const area = (here + next) / 2;
    if (below + area >= share) return pointAt(at - 1 + partOf(share - below, here, next));
    below += area;
    here = next;
  }
  return pointAt(GRID.length);
}

/** Which part of a step holds an area: the root of `areaTo`, in the form that does not cancel. */
function partOf(area: number, here: number, next: number): number {
  const root = Math.sqrt(here ** 2 + 2 * (next - here) * area);
  return area === 0 ? 0 : (2 * area) / (here + root);
}

function pointAt(place: number): number {
  return GRID_LOWEST + place * GRID_STEP;
}
