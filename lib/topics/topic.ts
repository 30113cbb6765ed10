import { z } from 'zod';
import { areas } from '../areas';
import type { Catalogue } from '../catalogue';
import { idSchema } from '../source';

/** A part of the trade in which competence is measured. */
export const topicSchema = z.strictObject({
  id: idSchema,
  /** From 1, in the order of the trade's work. */
  place: z.int().positive(),
  /** Areas whose causes are found by it. A topic without any is practised in every case. */
  areas: z.array(z.enum(areas)),
  checks: z.array(idSchema),
  text: z.strictObject({ en: z.strictObject({ name: z.string().min(1), about: z.string().min(1) }) }),
});

export type Topic = z.infer<typeof topicSchema>;

export function topicsInOrder({ topics }: Pick<Catalogue, 'topics'>): Topic[] {
  return [...topics.values()].sort((a, b) => a.place - b.place);
}
