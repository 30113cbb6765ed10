import type { TaskModel } from './task-model';

/** What may be drawn from a pool for: practice, or work that counts and whose seeds nobody outside may know. */
export const poolUses = ['practice', 'assessed'] as const;
export type PoolUse = (typeof poolUses)[number];

/** A topic that a task of a pool is expected to tell something of, and how. */
export interface PoolTopic {
  topic: string;
  model: TaskModel;
}

/** One of those that stood at the front when a task was chosen. */
export interface Contender {
  poolTaskId: string;
  /** Expected information a minute of work, 1/(logit² · min). */
  worth: number;
}

/** Why a task was chosen, so that the choice can be replayed. */
export interface TaskChoice {
  /** The topic it was chosen for. */
  topic: string;
  /** How worth was measured. */
  by: 'cut' | 'edge';
  /** The best, the worthiest first. */
  contenders: readonly Contender[];
  /** Name of the random stream that drew one of them, without the secret. */
  stream: string;
}
