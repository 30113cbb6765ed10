import type { TaskModel } from '@/lib/competency/task-model';

/** A task that is right or wrong; its difficulty known, nothing to guess, where nothing else is said. */
export function choice(difficulty: number, { slope = 1, floor = 0, spread = 0 } = {}): TaskModel {
  return { kind: 'choice', difficulty, slope, floor, spread };
}

/** A task of so many points as there are steps, their difficulties known. */
export function steps(...difficulties: number[]): TaskModel {
  return { kind: 'steps', steps: difficulties, spread: 0 };
}
