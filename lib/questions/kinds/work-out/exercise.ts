import type { z } from 'zod';
import type { Rig } from '../../../rig/rig';
import type { Draw, DrawnBody } from '../../kind';

/** One sort of calculation, with the topics that it drills. */
export interface Exercise<Schema extends z.ZodType = z.ZodType> {
  /** Under which content has its ranges. */
  id: string;
  topics: readonly string[];
  /** Whether a rig has what is reckoned with, on that topic if one is asked for; every one has where it does not say. */
  fits?: (rig: Rig, topic: string | undefined) => boolean;
  ranges: Schema;
  /** Undefined for a draw that cannot be asked. */
  draw(draw: Draw<z.infer<Schema>>): DrawnBody | undefined;
}

/** For the types' sake. */
export function defineExercise<Schema extends z.ZodType>(exercise: Exercise<Schema>): Exercise<Schema> {
  return exercise;
}
