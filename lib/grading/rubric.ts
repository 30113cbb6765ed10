import { z } from 'zod';
import { idSchema, sourceSchema } from '../source';

const share = z.number().min(0).max(1);
/** Points of a hundred. */
const points = z.number().min(0).max(100);

export const partsSchema = z
  .strictObject({ verdicts: points, reasons: points, call: points, route: points, practice: points })
  .refine(
    ({ verdicts, reasons, call, route, practice }) =>
      Math.abs(verdicts + reasons + call + route + practice - 100) < 1e-9,
    'the weights of the parts must sum to 100',
  );

const verdictSchema = z.strictObject({
  /** Share of a verdict that reading the dial earns, where there is one. */
  dial: share,
  /** Error in smallest divisions up to which the dial is read right, and up to which it earns half. */
  rightWithin: z.number().positive(),
  halfWithin: z.number().positive(),
  /** What a right cannot tell earns before a finer instrument or another condition settled it. */
  cannotTellAtOnce: share,
});

const reasonSchema = z.strictObject({
  /** An area is cleared when its share falls below this part of what it was, */
  clearedBelow: share,
  /** or when it is hardly there. */
  hardly: share,
  /** An area is suspect when it carries this share. */
  suspectFrom: share,
  /** What nobody should leave unnamed: an area of this share or more that fell below this part of it, or one that leads. */
  plain: z.strictObject({ from: share, clearedBelow: share, suspectFrom: share }),
  /** What is lost of the implication when every plain area was left unnamed. */
  missed: share,
});

const callSchema = z
  .strictObject({ cause: share, areaOnly: share, repair: share, proof: share })
  .refine(
    ({ cause, repair, proof }) => Math.abs(cause + repair + proof - 1) < 1e-9,
    'cause, repair and proof must sum to 1',
  )
  .refine(({ cause, areaOnly }) => areaOnly < cause, 'the area alone must earn less than the cause');

const routeSchema = z.strictObject({
  /** Full marks from this share of the minutes well spent. */
  fullFrom: share.positive(),
  /** A check worth this share of the best one's worth per minute counts like the best. */
  asGoodFrom: share.positive(),
  /** Belief in one repair from which only measuring the part itself still counts. */
  settledFrom: share,
  /** Credit of a check that reads a trace, whose worth is not computed beforehand. */
  unratedTrace: share,
});

/** What each lapse costs, as a share of the part. */
const costsSchema = z.strictObject({
  'unwise-condition': share,
  'off-scale': share,
  'too-coarse': share,
  'long-before-short': share,
  'left-undone': share,
  'wrong-restoring': share,
  'good-part-condemned': share,
});

const practiceSchema = z.strictObject({
  costs: costsSchema,
  /** Below this share of a dial's span its class error is larger than most limits allow. */
  coarseBelow: share,
  /** Minutes from which a check is long and up to which one is short: the short one first, where it tells as much. */
  longFrom: z.number().positive(),
  shortUpTo: z.number().positive(),
});

/** Totals from which the ordered score is 1, 2, 3 and 4. */
const bandsSchema = z
  .tuple([points, points, points, points])
  .refine((from) => from.every((at, index) => index === 0 || at > (from[index - 1] ?? 0)), 'bands must rise');

/** How attempts are marked: what each part weighs, what each lapse costs, where the thresholds lie. */
export const rubricSchema = z
  .strictObject({
    id: idSchema,
    /** Raised with every change, so that a stored grade says by what it was marked. */
    version: z.int().positive(),
    parts: partsSchema,
    /**
     * Fewer findings than this do not earn full marks for verdicts and reasons: one lucky reading is no diagnosis. Where the
     * expert needs fewer readings, as many as those.
     */
    findingsExpected: z.int().positive(),
    verdict: verdictSchema,
    reason: reasonSchema,
    call: callSchema,
    route: routeSchema,
    practice: practiceSchema,
    bands: bandsSchema,
    /** No total rises above this once something dangerous was done. */
    safetyCap: z.int().min(0).max(100),
    source: sourceSchema,
    text: z.strictObject({
      en: z.strictObject({ name: z.string(), cleared: z.string(), suspect: z.string(), plain: z.string() }),
    }),
  })
  .refine(({ bands, safetyCap }) => safetyCap < bands[1], 'safetyCap must lie in the first band');

export type Rubric = z.infer<typeof rubricSchema>;

/** The rubric by which an attempt is marked that belongs to no set. */
export const STANDARD_RUBRIC = 'standard';
