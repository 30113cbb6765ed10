import { z } from 'zod';

const logits = z.number().min(-20).max(20);
/** Standard deviation of the difficulty, as far as it is not known, logits. */
const spread = z.number().min(0).max(3);

/** How the scores of a task depend on ability, logits. */
export const taskModelSchema = z.discriminatedUnion('kind', [
  /** Right or wrong; `floor` is the chance of a right answer by somebody who knows nothing. */
  z.strictObject({
    kind: z.literal('choice'),
    difficulty: logits,
    slope: z.number().positive().max(5).optional(),
    floor: z.number().min(0).max(0.99),
    spread,
  }),
  /** Partial credit: score 0…steps.length. */
  z.strictObject({ kind: z.literal('steps'), steps: z.array(logits).min(1).max(12).readonly(), spread }),
]);

export type TaskModel = z.infer<typeof taskModelSchema>;
