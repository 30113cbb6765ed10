import { z } from 'zod';
import { idSchema, sourceSchema } from '../source';

const words = z.string().min(1);

/** Rules of a certificate, after what ISO/IEC 17024 asks of a scheme. Content, or an organisation's own version. */
export const schemeSchema = z.strictObject({
  id: idSchema,
  /** From 1; somebody is judged under the version that they applied for. */
  version: z.int().positive(),
  /** Which role profile says what must be shown. */
  profile: idSchema,
  /** Shares of the topics in what a candidate is given, and how many responses of each at least. */
  blueprint: z
    .array(z.strictObject({ topic: idSchema, share: z.number().min(0).max(1), atLeast: z.int().min(0) }))
    .min(1),
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
  confidence: z.number().min(0.5).max(0.999),
  refuse: z.number().min(0.001).max(0.5),
  /** Only responses of so many days before the decision count, each in full. */
  windowDays: z.int().positive(),
  validMonths: z.int().positive(),
  retake: z.strictObject({ waitDays: z.array(z.int().min(0)).min(1), perYear: z.int().min(1) }),
  appeal: z.strictObject({ withinDays: z.int().min(1), answeredInDays: z.int().min(1) }),
  text: z.strictObject({
    en: z.strictObject({
      name: words,
      /** Who may do what, where, for how long. */
      claim: words,
      /** What it is not for. */
      notFor: words,
      criteria: words,
      recertification: words,
      appeals: words,
    }),
  }),
  source: sourceSchema,
});

export type Scheme = z.infer<typeof schemeSchema>;
