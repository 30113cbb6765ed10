import { GRID } from '@/lib/competency/grid';
import type { TaskModel } from '@/lib/competency/task-model';

/*
 * Chances, information and posterior as their formulas are written, a point at a time: what the quick way is held against.
 */

export function plainChance(model: TaskModel, score: number, theta: number): number {
  if (model.kind === 'choice') {
    const slope = (model.slope ?? 1) / Math.sqrt(1 + (Math.PI * (model.slope ?? 1) ** 2 * model.spread ** 2) / 8);
    const right = model.floor + (1 - model.floor) / (1 + Math.exp(-slope * (theta - model.difficulty)));
    return score === 1 ? right : 1 - right;
  }
  const three = [
    [1 / 6, -Math.sqrt(3)],
    [2 / 3, 0],
    [1 / 6, Math.sqrt(3)],
  ] as const;
  return sum(
    three.map(([share, z]) => share * (partialCredit(model.steps, theta - z * model.spread)[score] as number)),
  );
}

export function plainInformation(model: TaskModel, theta: number): number {
  if (model.kind === 'choice') {
    const slope = (model.slope ?? 1) / Math.sqrt(1 + (Math.PI * (model.slope ?? 1) ** 2 * model.spread ** 2) / 8);
    const right = plainChance(model, 1, theta);
    return slope ** 2 * ((1 - right) / right) * ((right - model.floor) / (1 - model.floor)) ** 2;
  }
  const chances = partialCredit(model.steps, theta);
  const mean = sum(chances.map((chance, score) => score * chance));
  const variance = sum(chances.map((chance, score) => chance * (score - mean) ** 2));
  return variance / (1 + model.spread ** 2 * variance);
}

/** Shares of the points of the grid, from the sum of log chances and a normal prior of mean 0 and spread 1. */
export function plainPosterior(logs: readonly number[]): number[] {
  const both = logs.map((log, at) => log - 0.5 * (GRID[at] as number) ** 2);
  const most = Math.max(...both);
  const shares = both.map((log) => Math.exp(log - most));
  const all = sum(shares);
  return shares.map((share) => share / all);
}

/** Masters 1982: P(score k) ∝ exp Σ_{j ≤ k} (θ − δ_j). */
function partialCredit(steps: readonly number[], theta: number): number[] {
  const logits = [0, ...steps.map((_, at) => sum(steps.slice(0, at + 1).map((step) => theta - step)))];
  const weights = logits.map(Math.exp);
  return weights.map((weight) => weight / sum(weights));
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
