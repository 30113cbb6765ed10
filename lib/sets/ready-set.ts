import { z } from 'zod';
import { idSchema, sourceSchema } from '../source';
import { setBodySchema } from './set-body';

/** A set that ships as content, for instructors to start from. It is invented: nobody's course. */
export const readySetSchema = z.strictObject({
  id: idSchema,
  /** From 1, in the order in which they are offered. */
  place: z.int().positive(),
  body: setBodySchema,
  source: sourceSchema,
  text: z.strictObject({ en: z.strictObject({ about: z.string().min(1) }) }),
});

export type ReadySet = z.infer<typeof readySetSchema>;

export function readySetsInOrder(readySets: ReadonlyMap<string, ReadySet>): ReadySet[] {
  return [...readySets.values()].sort((a, b) => a.place - b.place);
}
