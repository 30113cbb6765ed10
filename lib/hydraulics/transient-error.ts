import type { Second } from '../units';
import { SolveError, type SolveFailure } from './errors';

/** Thrown when even the smallest step of a transient cannot be solved. */
export class StepError extends SolveError {
  override name = 'StepError';

  constructor(
    failure: SolveFailure,
    readonly time: Second,
    readonly step: Second,
  ) {
    super(failure);
    this.message = `At ${time} s, with a step of ${step} s: ${this.message}`;
  }
}

/** Thrown when a transient has not ended after as many steps as it was given. */
export class TooManyStepsError extends Error {
  override name = 'TooManyStepsError';

  constructor(
    readonly steps: number,
    readonly time: Second,
  ) {
    super(`The transient stands at ${time} s after ${steps} steps`);
  }
}
