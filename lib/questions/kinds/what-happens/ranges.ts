import { z } from 'zod';

const pair = z.tuple([z.int().positive(), z.int().positive()]).refine(([least, most]) => least <= most);

export const whatHappensRanges = z.strictObject({
  /** Days of each rig that it is asked on. */
  days: z.int().min(1).max(8),
  /** Severities that it is asked at, as far as a cause has them. */
  severities: z.array(z.number().min(0).max(1)).min(1),
  /** Share of the questions that ask for the cause behind a pattern. */
  whichCauseShare: z.number().min(0).max(1),
  /** Readings that are asked about. */
  rows: pair,
  /** Readings that make a pattern. */
  patternRows: pair,
});

export type WhatHappensRanges = z.infer<typeof whatHappensRanges>;
