import { and, eq, inArray, ne, or } from 'drizzle-orm';
import type { Db } from '../client';
import { safetyStates, topicStates } from '../schema';
import type { Statement } from '../together';

export type TopicStateRow = typeof topicStates.$inferSelect;
export type SafetyStateRow = typeof safetyStates.$inferSelect;

interface Whose {
  organizationId: string;
  learnerId: string;
}

/** People of an organisation with a state that was made with another half-life or by other rules. */
export async function listStale(
  db: Db,
  organizationId: string,
  { halfLifeDays, rules }: Pick<TopicStateRow, 'halfLifeDays' | 'rules'>,
): Promise<string[]> {
  const rows = await db
    .selectDistinct({ learnerId: topicStates.learnerId })
    .from(topicStates)
    .where(
      and(
        eq(topicStates.organizationId, organizationId),
        or(ne(topicStates.halfLifeDays, halfLifeDays), ne(topicStates.rules, rules)),
      ),
    );
  return rows.map(({ learnerId }) => learnerId);
}

/** Keeps states of somebody's topics in the place of those kept before. @param topics  Those looked at: what has no state now had its evidence withdrawn. */
export function keepingTopicStates(
  db: Db,
  { organizationId, learnerId }: Whose,
  topics: readonly string[],
  states: readonly Omit<TopicStateRow, keyof Whose>[],
): Statement[] {
  const own = and(eq(topicStates.learnerId, learnerId), eq(topicStates.organizationId, organizationId));
  return [
    db.delete(topicStates).where(and(own, inArray(topicStates.topic, [...topics]))),
    ...states.map((state) => db.insert(topicStates).values({ ...state, organizationId, learnerId })),
  ];
}

/** Forgets the states of all of somebody's topics. */
export function forgettingTopicStates(db: Db, { organizationId, learnerId }: Whose): Statement {
  return db
    .delete(topicStates)
    .where(and(eq(topicStates.learnerId, learnerId), eq(topicStates.organizationId, organizationId)));
}

export function keepingSafetyState(db: Db, state: SafetyStateRow): Statement {
  return db
    .insert(safetyStates)
    .values(state)
    .onConflictDoUpdate({
      target: [safetyStates.organizationId, safetyStates.learnerId],
      set: { recent: state.recent },
    });
}
