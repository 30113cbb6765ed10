import { z } from 'zod';

export const judgeRanges = z.strictObject({
  /** A clear reading lies further from its limit than accuracy and readability together, by this factor. */
  clearBy: z.number().min(1),
  /** A reading that is too close lies within this share of the guard band. */
  closeWithin: z.number().positive().max(1),
  /** How far beyond the limit readings may lie, as a share of the way from a sound rig's value to the limit. */
  beyond: z.number().positive(),
  /** The same of what is collected in a glass: a leak has no bounds. */
  spilling: z.number().positive(),
  /** How often a dial's class has to be turned into an error first. */
  classAlone: z.number().min(0).max(1),
});

export type JudgeRanges = z.infer<typeof judgeRanges>;
