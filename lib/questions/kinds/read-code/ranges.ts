import { z } from 'zod';
import { idSchema } from '../../../source';
import { unitNames } from '../../../units';
import { parameterSchema } from '../../shared/bus-parameter';

export const readCodeRanges = z.strictObject({
  forms: z.array(z.enum(['meaning', 'failure-mode', 'possible', 'proof', 'trouble-bytes', 'special-bytes'])).min(1),
  /** Topics of what a suspect parameter stands for, by its number. */
  topics: z.record(z.string().regex(/^\d+$/), z.array(idSchema).min(1)),
  /** Failure modes that are easily taken for each other. */
  alikeModes: z.array(z.array(z.string().regex(/^\d+$/)).min(3)).min(2),
  /** Options of a question that asks for what is possible. */
  options: z.int().min(4).max(8),
  mostPossible: z.int().min(1),
  /** Codes stored together, at most. */
  mostCodes: z.int().min(1),
  /** Suspect parameter numbers that the standard leaves to makers. */
  makersOwn: z.tuple([z.int(), z.int()]),
  mostOften: z.int().min(1).max(126),
  /** Parameters whose bytes may say something else than a value. */
  parameters: z.array(parameterSchema.extend({ unit: z.enum(unitNames), decimals: z.int().min(0) })).min(2),
});

export type ReadCodeRanges = z.infer<typeof readCodeRanges>;
