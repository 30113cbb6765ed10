import { z } from 'zod';
import { idSchema, sourceSchema } from '../source';

/** Something done before a vehicle is handed back, or something that looks like it and must not be done. */
const restoringStepSchema = z.strictObject({
  id: idSchema,
  /** A tempting step that does harm. */
  wrong: z.boolean(),
  text: z.strictObject({ en: z.strictObject({ name: z.string(), why: z.string() }) }),
});

export type RestoringStep = z.infer<typeof restoringStepSchema>;

export const restoringSchema = z.strictObject({
  id: z.literal('steps'),
  steps: z.array(restoringStepSchema).min(1),
  source: sourceSchema,
});
