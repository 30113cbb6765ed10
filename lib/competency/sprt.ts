import { chance, type TaskModel } from './task-model';

/*
 * Wald's sequential test: the check on the posterior rule, and a rule of its own for fixed forms. It goes on until the
 * answers are so many times likelier from somebody above the cut than from somebody below it, or the other way round.
 */

/** Abilities (logits) that must not be mistaken for each other; in between either decision is right enough. */
export interface Indifference {
  low: number;
  high: number;
}

/** How often each mistake may be made, 0…½. */
export interface ErrorRates {
  /** Somebody at `low` passes. */
  falseReady: number;
  /** Somebody at `high` does not. */
  falseNotYet: number;
}

/** Logarithm of how many times likelier a score is from somebody at `high` than from somebody at `low`. Add them up. */
export function logRatio(model: TaskModel, score: number, { low, high }: Indifference): number {
  return Math.log(chance(model, score, high) / chance(model, score, low));
}

export interface Bounds {
  lower: number;
  upper: number;
}

/**
 * Wald's bounds on the sum. They keep the error rates nearly; to stop after so many tasks changes these.
 *
 * @source Wald 1945, Annals of Mathematical Statistics 16 (from memory).
 */
export function sprtBounds({ falseReady, falseNotYet }: ErrorRates): Bounds {
  return { lower: Math.log(falseNotYet / (1 - falseReady)), upper: Math.log((1 - falseNotYet) / falseReady) };
}

export function sprtDecision(sum: number, { lower, upper }: Bounds): 'ready' | 'not-yet' | 'continue' {
  if (sum >= upper) return 'ready';
  return sum <= lower ? 'not-yet' : 'continue';
}
