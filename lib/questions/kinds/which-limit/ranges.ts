import { z } from 'zod';

const share = z.number().min(0).max(1);

export const whichLimitRanges = z.strictObject({
  /** How often the sheet has no line for what was read. */
  noLine: share,
  /** How often that is offered where the sheet has one. */
  noLineOffered: share,
});

export type WhichLimitRanges = z.infer<typeof whichLimitRanges>;
