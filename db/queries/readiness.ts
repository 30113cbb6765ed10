import { and, eq, inArray } from 'drizzle-orm';
import type { Db } from '../client';
import { safetyStates, topicStates } from '../schema';

/** Whose states are read: of everybody in an organisation where nobody is named. */
export interface WhoseStates {
  organizationId: string;
  learnerId?: string;
}

export type TopicState = Pick<
  typeof topicStates.$inferSelect,
  'learnerId' | 'topic' | 'at' | 'sum' | 'count' | 'weight' | 'cases'
>;

/** What evidence comes to on some topics. */
export async function listStatesOn(
  db: Db,
  { organizationId, learnerId }: WhoseStates,
  topics: readonly string[],
): Promise<TopicState[]> {
  const { at, sum, count, weight, cases, topic } = topicStates;
  return db
    .select({ learnerId: topicStates.learnerId, topic, at, sum, count, weight, cases })
    .from(topicStates)
    .where(
      and(
        eq(topicStates.organizationId, organizationId),
        learnerId === undefined ? undefined : eq(topicStates.learnerId, learnerId),
        inArray(topic, [...topics]),
      ),
    );
}

/** Newest cases with the safety-critical acts in each. */
export async function listSafetyOf(
  db: Db,
  { organizationId, learnerId }: WhoseStates,
): Promise<Pick<typeof safetyStates.$inferSelect, 'learnerId' | 'recent'>[]> {
  return db
    .select({ learnerId: safetyStates.learnerId, recent: safetyStates.recent })
    .from(safetyStates)
    .where(
      and(
        eq(safetyStates.organizationId, organizationId),
        learnerId === undefined ? undefined : eq(safetyStates.learnerId, learnerId),
      ),
    );
}
