import type { AnswerSet } from './answer-groups';

/*
 * The marginal likelihood of the Rasch model with normal abilities, and its slopes. An ability is spread · z with z standard
 * normal, so that the parameters are the difficulties, in logits, and after them the spread.
 */

/** Equal steps of z, with normal weights: far more exact for a bell than its step suggests, and fine enough for 1,000 items. */
const NODES = 121;
const REACH = 6;
const z = Float64Array.from({ length: NODES }, (_, node) => -REACH + (2 * REACH * node) / (NODES - 1));
const logWeight = (() => {
  const total = z.reduce((sum, at) => sum + Math.exp(-0.5 * at * at), 0);
  return z.map((at) => -0.5 * at * at - Math.log(total));
})();
/** Nodes with less than this share of the likeliest one's people say nothing of what is missing. */
const NEGLIGIBLE = 1e-10;

/** Matrices hold their lower triangle only; size = difficulties + 1. */
export interface Likelihood {
  log: number;
  gradient: Float64Array;
  /** What the answers would tell if abilities were known. */
  complete: Float64Array;
  /** What not knowing them takes away (Louis 1982); zeros where not asked for. */
  missing: Float64Array;
}

/**
 * @param rightAnswers  Of each fitted item.
 * @param withMissing  Whether the information that is missing is worked out: the dear part.
 */
export function likelihoodOf(
  sets: readonly AnswerSet[],
  rightAnswers: Float64Array,
  parameters: Float64Array,
  withMissing: boolean,
): Likelihood {
  const size = parameters.length;
  const matrix = () => new Float64Array(size * size);
  const found = { log: 0, gradient: new Float64Array(size), complete: matrix(), missing: matrix() };
  const curves = curvesOf(parameters);
  for (const [item, right] of rightAnswers.entries()) {
    found.log -= right * (parameters[item] as number);
    found.gradient[item] = -right;
  }
  for (const set of sets) addSet(found, set, curves, withMissing);
  return found;
}

interface Curves {
  spread: number;
  /** Chance of a right answer, item × node. */
  chance: Float64Array;
  /** log(1 + exp(ability − difficulty)), item × node. */
  logNorm: Float64Array;
}

function curvesOf(parameters: Float64Array): Curves {
  const items = parameters.length - 1;
  const spread = parameters[items] as number;
  const [chance, logNorm] = [new Float64Array(items * NODES), new Float64Array(items * NODES)];
  for (let item = 0, at = 0; item < items; item++)
    for (let node = 0; node < NODES; node++, at++) {
      const above = spread * (z[node] as number) - (parameters[item] as number);
      chance[at] = 1 / (1 + Math.exp(-above));
      logNorm[at] = Math.max(0, above) + Math.log1p(Math.exp(-Math.abs(above)));
    }
  return { spread, chance, logNorm };
}

function addSet(found: Likelihood, set: AnswerSet, curves: Curves, withMissing: boolean): void {
  const [logNorm, expected] = [sumOver(set.items, curves.logNorm), sumOver(set.items, curves.chance)];
  const people = new Float64Array(NODES);
  for (const { right, people: count } of set.groups) {
    const belief = logWeight.map(
      (weight, node) => weight + right * curves.spread * (z[node] as number) - (logNorm[node] as number),
    );
    found.log += count * normalise(belief);
    const pull = z.map((at, node) => at * (right - (expected[node] as number)));
    for (let node = 0; node < NODES; node++) people[node] = (people[node] as number) + count * (belief[node] as number);
    addPull(found, count, belief, pull);
    if (withMissing) addGroupMissing(found, set, curves, { count, belief, pull });
  }
  for (const item of set.items) addItem(found, item, curves, people);
  if (withMissing) addNodesMissing(found.missing, set, curves, people);
}

/** Sum over items of what they have at each node. */
function sumOver(items: Int32Array, of: Float64Array): Float64Array {
  const sum = new Float64Array(NODES);
  for (const item of items)
    for (let node = 0; node < NODES; node++) sum[node] = (sum[node] as number) + (of[item * NODES + node] as number);
  return sum;
}

/** Turns logs into shares that sum to 1. @returns The log of their sum before. */
function normalise(logs: Float64Array): number {
  const most = logs.reduce((high, log) => Math.max(high, log), Number.NEGATIVE_INFINITY);
  let total = 0;
  for (let node = 0; node < NODES; node++) {
    const share = Math.exp((logs[node] as number) - most);
    logs[node] = share;
    total += share;
  }
  for (let node = 0; node < NODES; node++) logs[node] = (logs[node] as number) / total;
  return most + Math.log(total);
}

function addPull({ gradient }: Likelihood, count: number, belief: Float64Array, pull: Float64Array): void {
  gradient[gradient.length - 1] = (gradient.at(-1) as number) + count * dot(belief, pull);
}

function addItem({ gradient, complete }: Likelihood, item: number, { chance }: Curves, people: Float64Array): void {
  const size = gradient.length;
  const spread = (size - 1) * size;
  let [right, own, cross, square] = [0, 0, 0, 0];
  for (let node = 0; node < NODES; node++) {
    const probability = chance[item * NODES + node] as number;
    const [count, at] = [people[node] as number, z[node] as number];
    const information = count * probability * (1 - probability);
    right += count * probability;
    own += information;
    cross -= information * at;
    square += information * at * at;
  }
  gradient[item] = (gradient[item] as number) + right;
  add(complete, item * size + item, own);
  add(complete, spread + item, cross);
  add(complete, spread + size - 1, square);
}

/** How the slopes of one person vary with an ability that is not known: mean square, here less the square of the mean. */
function addGroupMissing(
  { missing, gradient }: Likelihood,
  { items }: AnswerSet,
  { chance }: Curves,
  { count, belief, pull }: { count: number; belief: Float64Array; pull: Float64Array },
): void {
  const size = gradient.length;
  const spread = (size - 1) * size;
  const meanPull = dot(belief, pull);
  const weighted = belief.map((share, node) => share * ((pull[node] as number) - meanPull));
  const means = new Float64Array(items.length);
  for (const [place, item] of items.entries()) {
    const own = chance.subarray(item * NODES, (item + 1) * NODES);
    means[place] = dot(belief, own);
    add(missing, spread + item, count * dot(weighted, own));
  }
  add(missing, spread + size - 1, count * dot(weighted, pull));
  addOuter(missing, size, items, means, -count);
}

function addNodesMissing(missing: Float64Array, { items }: AnswerSet, { chance }: Curves, people: Float64Array): void {
  const size = Math.sqrt(missing.length);
  const most = people.reduce((high, count) => Math.max(high, count), 0);
  for (let node = 0; node < NODES; node++) {
    const count = people[node] as number;
    if (count <= NEGLIGIBLE * most) continue;
    const here = Float64Array.from(items, (item) => chance[item * NODES + node] as number);
    addOuter(missing, size, items, here, count);
  }
}

/** Adds factor · v vᵀ at the items' places, which ascend. */
function addOuter(matrix: Float64Array, size: number, items: Int32Array, v: Float64Array, factor: number): void {
  for (let row = 0; row < items.length; row++) {
    const scaled = factor * (v[row] as number);
    const start = (items[row] as number) * size;
    for (let column = 0; column <= row; column++)
      add(matrix, start + (items[column] as number), scaled * (v[column] as number));
  }
}

function add(list: Float64Array, at: number, value: number): void {
  list[at] = (list[at] as number) + value;
}

function dot(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let node = 0; node < NODES; node++) sum += (one[node] as number) * (other[node] as number);
  return sum;
}
