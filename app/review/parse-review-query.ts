import { z } from 'zod';

export const workKinds = ['all', 'turns', 'practice'] as const;

const querySchema = z.object({
  kind: z.enum(workKinds).catch('all'),
  /** Undefined for any. */
  assignment: z.string().min(1).max(80).optional().catch(undefined),
  /** Only what nobody wrote to or gave points for. */
  unseen: z
    .literal('yes')
    .optional()
    .catch(undefined)
    .transform((asked) => asked === 'yes'),
});
export type ReviewQuery = z.infer<typeof querySchema>;

/** What the address asks to be listed; what cannot be used is as if it were not asked. */
export function parseReviewQuery(asked: Record<string, string | string[] | undefined>): ReviewQuery {
  return querySchema.parse(asked);
}
