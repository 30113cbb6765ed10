import { createHmac } from 'node:crypto';
import { randomId } from '../random-id';
import { secret } from '../secret';

/** A seed for practice, which nobody can guess. */
export const practiceSeed = randomId;

/**
 * A seed for a place of a sitting in which nothing is told: another for each learner, and drawn with what only this
 * installation knows, so that nobody can draw the same question elsewhere.
 *
 * @param under  Content and version under which the question is drawn.
 */
export function assessedSeed(sittingId: string, place: number, under: string): string {
  return createHmac('sha256', secret()).update(`question ${sittingId} ${place} ${under}`).digest('hex').slice(0, 20);
}
