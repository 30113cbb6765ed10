import { z } from 'zod';

export const readDialRanges = z.strictObject({
  /** How often a dial's needle swings. */
  swingShare: z.number().min(0).max(1),
  /** Half the swing, in half divisions. */
  swingSteps: z.tuple([z.int().positive(), z.int().positive()]),
});

export type ReadDialRanges = z.infer<typeof readDialRanges>;
