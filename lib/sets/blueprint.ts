import { z } from 'zod';
import { idSchema, sourceSchema } from '../source';

const range = z
  .tuple([z.number(), z.number()])
  .refine(([from, to]) => from <= to, 'the first of a range is no more than the second');

/** What a set is meant to be made of: how many tasks on which topics, how long, how hard. */
export const blueprintSchema = z.strictObject({
  id: idSchema,
  /** From 1, in the order in which they are offered. */
  place: z.int().positive(),
  /** Fewest and most tasks on each topic; what is not named does not belong. */
  topics: z.array(z.strictObject({ topic: idSchema, tasks: range })).min(1),
  /** Fewest and most expected minutes of the whole set. */
  minutes: range,
  /** Between these the mean of what its tasks are expected to have, logits. */
  difficulty: range,
  source: sourceSchema,
  text: z.strictObject({ en: z.strictObject({ name: z.string().min(1), about: z.string().min(1) }) }),
});

export type Blueprint = z.infer<typeof blueprintSchema>;

export function blueprintsInOrder(blueprints: ReadonlyMap<string, Blueprint>): Blueprint[] {
  return [...blueprints.values()].sort((a, b) => a.place - b.place);
}
