import { createHmac } from 'node:crypto';
import { secret } from '../secret';

/** Where in which turn at which assignment something is drawn. */
export interface Drawing {
  assignmentId: string;
  /** Of the turn, from 1. */
  number: number;
  place: number;
}

/**
 * A seed of work at an assignment, drawn with what only this installation knows, so that nobody can draw the same
 * elsewhere.
 *
 * @param learnerId  Whose it is alone; left out for what everybody gets.
 */
export function turnSeed({ assignmentId, number, place }: Drawing, learnerId = ''): string {
  return derived(`turn ${assignmentId} ${number} ${place} ${learnerId}`);
}

/** The id of the turn that a key begins: the same key of the same person finds it again. */
export function turnId(assignmentId: string, learnerId: string, key: string): string {
  return derived(`turn id ${assignmentId} ${learnerId} ${key}`);
}

function derived(text: string): string {
  return createHmac('sha256', secret()).update(text).digest('hex').slice(0, 20);
}
