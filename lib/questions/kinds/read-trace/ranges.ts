import { z } from 'zod';

const share = z.number().min(0).max(1);

export const readTraceRanges = z.strictObject({
  /** Days of each rig that traces are recorded on, by their numbers. */
  days: z.array(z.int().min(0).max(7)).min(1),
  /** How far a fault has gone, of what its cause ranges over. */
  degrees: z.array(share).min(1),
  /** How often a tank-vacuum trace is drawn, against any other: little shows on it. */
  tankWeight: share,
  /** Share of the questions that ask what a trace shows; the others ask where it goes wrong. */
  causeShare: share,
  /** Share of the traces on which nothing wrong is to be seen. */
  hiddenShare: share,
  /** Share of those that go wrong somewhere where “nowhere” is offered too. */
  nowhereShare: share,
  /** A departure is plain from this share of what the sound trace ranges over. */
  plainShare: share,
  /** How far two traces may lie apart in time, of the length of the recording. */
  slackShare: share,
});

export type ReadTraceRanges = z.infer<typeof readTraceRanges>;
