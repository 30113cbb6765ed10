import { z } from 'zod';
import { sourceSchema } from '../source';
import { questionKindIds } from './question';

/** What content says of a kind: its words and its ranges. */
export const questionContentSchema = z.strictObject({
  id: z.enum(questionKindIds),
  /** From 1, in the order of the list. */
  place: z.int().positive(),
  /** As the kind's own schema wants them. */
  ranges: z.record(z.string(), z.unknown()),
  /** Design difficulty in logits: base + Σ weight × feature. Assumed until answers recalibrate it. */
  difficulty: z.strictObject({ base: z.number(), weights: z.record(z.string(), z.number()) }),
  source: sourceSchema,
  text: z.strictObject({
    en: z.strictObject({
      name: z.string().min(1),
      about: z.string().min(1),
      /** ICU messages, by what the kind says. */
      lines: z.record(z.string().regex(/^[a-zA-Z][a-zA-Z0-9-]*$/), z.string().min(1)),
    }),
  }),
});

export type QuestionContent = z.infer<typeof questionContentSchema>;

/** Base and weighted features, in hundredths of a logit. @throws RangeError for a feature without a weight. */
export function designDifficulty({ difficulty }: QuestionContent, features: Readonly<Record<string, number>>): number {
  const sum = Object.entries(features).reduce((total, [feature, value]) => {
    const weight = difficulty.weights[feature];
    if (weight === undefined) throw new RangeError(`No weight for the feature ${feature}`);
    return total + weight * value;
  }, difficulty.base);
  return Math.round(sum * 100) / 100;
}
