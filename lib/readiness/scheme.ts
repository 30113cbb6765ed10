import { z } from 'zod';
import { idSchema, sourceSchema } from '../source';

/** Longest text of a scheme, so that a page of it stays a page. */
export const LONGEST_WORDS = 2_000;

const words = z.string().trim().min(1).max(LONGEST_WORDS);

/** What a scheme says in sentences. */
export const schemeWords = [
  'name',
  'claim',
  'notFor',
  'criteria',
  'taskAnalysis',
  'recertification',
  'appeals',
  'conflicts',
  'records',
  'transition',
] as const;
export type SchemeWords = (typeof schemeWords)[number];

/** Shares of a blueprint sum to 1 within so much: they are typed in whole percent. */
const SHARES_OFF = 0.005;

/** Rules of a certificate, after what ISO/IEC 17024 asks of a scheme. Content, or an organisation's own version. */
export const schemeSchema = z.strictObject({
  id: idSchema,
  /** From 1; somebody is judged under the version that they applied for. */
  version: z.int().positive(),
  /** Which role profile says how safe the work must have been. */
  profile: idSchema,
  /** When the tasks of the trade were last looked at that the blueprint rests on, and after how many months they are again. */
  taskAnalysis: z.strictObject({ on: z.iso.date(), reviewMonths: z.int().min(1).max(120) }),
  /** Shares of the topics in what a candidate is given, and how many responses of each at least. */
  blueprint: z
    .array(z.strictObject({ topic: idSchema, share: z.number().min(0).max(1), atLeast: z.int().min(0).max(60) }))
    .min(1)
    .refine((rows) => new Set(rows.map(({ topic }) => topic)).size === rows.length, 'a topic stands in it twice')
    .refine(
      (rows) => Math.abs(rows.reduce((sum, { share }) => sum + share, 0) - 1) <= SHARES_OFF,
      'the shares do not sum to 1',
    ),
  /** The cut that counts, and how it was set. `panel` once judges set it. */
  cut: z.strictObject({
    ability: z.number().min(-4).max(4),
    /** Of the cut, logits; null where nobody worked it out. */
    standardError: z.number().min(0).nullable(),
    setBy: z.discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('assumed'), because: words }),
      z.strictObject({ kind: z.literal('panel'), panelId: z.string(), judges: z.int().positive(), at: z.number() }),
    ]),
  }),
  /** Of a sitting under it: how long, and responses a topic after which it stays undecided. */
  sitting: z.strictObject({ minutes: z.int().min(10).max(480), maximum: z.int().min(1).max(60) }),
  confidence: z.number().min(0.5).max(0.999),
  refuse: z.number().min(0.001).max(0.5),
  /** Only responses of so many days before the decision count, each in full. */
  windowDays: z.int().positive(),
  validMonths: z.int().positive(),
  /** Days to wait after each refusal, the last for every further one; applications within 365 days at most. */
  retake: z.strictObject({ waitDays: z.array(z.int().min(0)).min(1), perYear: z.int().min(1) }),
  appeal: z.strictObject({ withinDays: z.int().min(1), answeredInDays: z.int().min(1) }),
  text: z.strictObject({
    en: z.strictObject({
      name: z.string().trim().min(1).max(120),
      /** Who may do what, where, for how long. */
      claim: words,
      /** What it is not for. */
      notFor: words,
      criteria: words,
      /** What the blueprint rests on. */
      taskAnalysis: words,
      recertification: words,
      appeals: words,
      /** Who may not decide, and what they have to say beforehand. */
      conflicts: words,
      /** What is kept of a candidate, and for how long. */
      records: words,
      /** What this version means for who applied under the one before. */
      transition: words,
    }),
  }),
  source: sourceSchema,
});

export type Scheme = z.infer<typeof schemeSchema>;
