import type { Evidence } from './evidence';
import type { TaskModel } from './task-model';

/** Evidence before it has its place in the log. */
export type Derived = Omit<Evidence, 'revision'>;

/** What is known of a response, whatever it was to. */
export type Response = Pick<Evidence, 'work' | 'counts' | 'hints' | 'exposure' | 'purpose' | 'at' | 'versions'>;

/** How hard something was, logits, and how well that is known. */
export interface Difficulty {
  logits: number;
  /** Standard deviation, logits. */
  spread: number;
}

/** Of a difficulty that nobody has calibrated. @source Assumed. */
export const DESIGN_SPREAD = 0.5;

/** Most steps that a response is told apart in. */
const MOST_STEPS = 12;

/**
 * Steps of something that is scored 0…`most`, one logit apart around its difficulty.
 *
 * @source Assumed, until answers tell: a whole logit between steps that mean something each.
 */
export function stepsAround({ logits, spread }: Difficulty, most: number): Extract<TaskModel, { kind: 'steps' }> {
  const count = Math.min(most, MOST_STEPS);
  const steps = Array.from({ length: count }, (_, index) => logits + index - (count - 1) / 2);
  return { kind: 'steps', steps, spread };
}

/** Whole steps of 0…`most` that a share of 0…1 has reached. */
export function stepsReached(share: number, most: number): number {
  // What binary fractions lose must not cost a step.
  return Math.min(most, Math.max(0, Math.floor(share * most + 1e-9)));
}
