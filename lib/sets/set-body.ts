import { z } from 'zod';
import { questionKindIds } from '../questions/question';
import { idSchema } from '../source';

/** Longest set: tasks of all its items together. */
export const MOST_TASKS = 60;

/** Names an item within its set; stays the same from version to version. */
const itemId = z.string().regex(/^[a-z0-9]{1,16}$/);
const count = z.int().min(1).max(20);
const logits = z.number().min(-6).max(6);

/** What seeded cases are asked for. What is left out is left open. */
const wishesSchema = z.strictObject({
  /** At least one of these is practised. */
  topics: z.array(idSchema).min(1).optional(),
  /** Any of these. */
  rigs: z.array(idSchema).min(1).optional(),
  /** From and to, logits, both included. */
  difficulty: z.tuple([logits, logits]).optional(),
  hardest: z.boolean().optional(),
  faults: z.enum(['single', 'double']).optional(),
  /** The expert needs no more than these minutes. */
  minutes: z.number().min(5).max(600).optional(),
});
export type CaseWishes = z.infer<typeof wishesSchema>;

const itemSchema = z.discriminatedUnion('kind', [
  /** One case that everybody gets, by its code. */
  z.strictObject({ id: itemId, kind: z.literal('case'), code: z.string().max(40) }),
  /** Cases that are drawn. */
  z.strictObject({ id: itemId, kind: z.literal('cases'), count, wishes: wishesSchema }),
  /** A question that somebody wrote, in the version that is live when the set is assigned. */
  z.strictObject({
    id: itemId,
    kind: z.literal('written'),
    questionId: z.string().max(80),
    /** That version; there once the set is assigned. */
    versionId: z.string().max(80).optional(),
  }),
  /** Questions that are drawn: of one kind, or of any that there is on the topic. */
  z.strictObject({
    id: itemId,
    kind: z.literal('questions'),
    count,
    questionKind: z.enum(questionKindIds).optional(),
    topic: idSchema,
  }),
]);
export type SetItem = z.infer<typeof itemSchema>;

/** What a version of a set consists of, in the order in which it is done. */
const bodySchema = z.strictObject({
  title: z.string().trim().min(1).max(120),
  /** What a learner reads before they begin. */
  note: z.string().max(2000),
  items: z.array(itemSchema).max(MOST_TASKS),
  /** The blueprint that it is held against; none where it is left out. */
  blueprint: idSchema.optional(),
});
export type SetBody = z.infer<typeof bodySchema>;

export const setBodySchema = bodySchema
  .refine(({ items }) => new Set(items.map(({ id }) => id)).size === items.length, 'two items have the same id')
  .refine((body) => taskCount(body) <= MOST_TASKS, `a set has no more than ${MOST_TASKS} tasks`);

export function taskCount({ items }: Pick<SetBody, 'items'>): number {
  return items.reduce((sum, item) => sum + ('count' in item ? item.count : 1), 0);
}
