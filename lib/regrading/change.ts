import { z } from 'zod';
import { partsSchema } from '../grading/rubric';

/** What may be changed about marks that were given. The acts that they were given for stay. */
export const changeSchema = z.discriminatedUnion('kind', [
  /** The parts of a case weigh something else, in every case of the assignment. */
  z.strictObject({ kind: z.literal('weights'), weights: partsSchema }),
  /** A task of the set counts for nobody. */
  z.strictObject({ kind: z.literal('withdraw'), place: z.int().min(1) }),
  /** A question's options that count as right too. */
  z.strictObject({
    kind: z.literal('key'),
    place: z.int().min(1),
    right: z.array(z.string().max(80)).min(1).max(20).readonly(),
  }),
]);
export type Change = z.infer<typeof changeSchema>;
