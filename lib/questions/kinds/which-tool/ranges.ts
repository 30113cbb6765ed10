import { z } from 'zod';

export const whichToolRanges = z.strictObject({
  /** Days that rigs are set on, since every cause is solved on each of them. */
  days: z.int().positive(),
  /** How often a fitting is to be loosened instead, where that can be asked. */
  openings: z.number().min(0).max(1),
  /** How badly broken a rig has to be reckoned with, as a cause's severity. */
  reckonedSeverity: z.number().min(0).max(1),
  /** The right instrument leaves more between a sound reading and the limit than its errors together, by this factor. */
  clearBy: z.number().min(1),
  /** One that is too coarse has a sound reading within this share of its guard band. */
  coarseWithin: z.number().positive().max(1),
});

export type WhichToolRanges = z.infer<typeof whichToolRanges>;
