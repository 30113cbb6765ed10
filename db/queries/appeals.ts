import { and, asc, desc, eq, isNotNull, ne, notExists, or, sql } from 'drizzle-orm';
import type { Db } from '../client';
import { appeals, users } from '../schema';
import type { Statement } from '../together';
import { about, type WorkKey } from './comments';

export type Appeal = typeof appeals.$inferSelect;
export type NewAppeal = Omit<Appeal, 'state' | 'answer' | 'decidedBy' | 'decidedAt'>;

/** Whose an appeal is; undefined where there is none. */
export async function findAppealWork(
  db: Db,
  id: string,
): Promise<{ learnerId: string; organizationId: string } | undefined> {
  const [row] = await db
    .select({ learnerId: appeals.learnerId, organizationId: appeals.organizationId })
    .from(appeals)
    .where(eq(appeals.id, id));
  return row;
}

/** An appeal; undefined where there is none. */
export async function findAppeal(db: Db, id: string): Promise<Appeal | undefined> {
  const [row] = await db.select().from(appeals).where(eq(appeals.id, id));
  return row;
}

/** Makes an appeal; changes nothing while one about the same is open. */
export function makingAppeal(db: Db, appeal: NewAppeal): Statement {
  const { id, organizationId, learnerId, attemptId, sittingId, place, note, madeAt, dueAt } = appeal;
  const work: WorkKey = attemptId ? { attemptId } : { sittingId: sittingId ?? '', ...(place !== null && { place }) };
  const open = db
    .select({ one: sql`1` })
    .from(appeals)
    .where(and(about(appeals, work), eq(appeals.state, 'open')));
  const column = <T>(name: keyof Appeal, value: T) => sql<T>`${sql.param(value, appeals[name])}`.as(appeals[name].name);
  return db.insert(appeals).select(
    db
      .select({
        id: column('id', id),
        organizationId: column('organizationId', organizationId),
        learnerId: column('learnerId', learnerId),
        attemptId: column('attemptId', attemptId),
        sittingId: column('sittingId', sittingId),
        place: column('place', place),
        note: column('note', note),
        state: column('state', 'open' as const),
        madeAt: column('madeAt', madeAt),
        dueAt: column('dueAt', dueAt),
        answer: column('answer', null),
        decidedBy: column('decidedBy', null),
        decidedAt: column('decidedAt', null),
      })
      .from(sql`(select 1)`)
      .where(notExists(open)),
  );
}

/** Takes a learner's open appeal back; changes nothing where it is not open or not theirs. */
export function withdrawingAppeal(db: Db, { id, learnerId }: { id: string; learnerId: string }): Statement {
  return db
    .update(appeals)
    .set({ state: 'withdrawn' })
    .where(and(eq(appeals.id, id), eq(appeals.learnerId, learnerId), eq(appeals.state, 'open')));
}

/** Decides an open appeal; changes nothing where it is not open, or the learner's own. */
export function decidingAppeal(
  db: Db,
  decision: { id: string; state: 'upheld' | 'declined'; answer: string; decidedBy: string; decidedAt: Date },
): Statement {
  const { id, decidedBy, ...change } = decision;
  return db
    .update(appeals)
    .set({ ...change, decidedBy })
    .where(and(eq(appeals.id, id), eq(appeals.state, 'open'), ne(appeals.learnerId, decidedBy)));
}

/** Appeals about a piece of work, the newest first, each with who decided it. */
export async function listAppealsOf(db: Db, work: WorkKey): Promise<(Appeal & { decider: string | null })[]> {
  const rows = await db
    .select({ appeal: appeals, decider: users.name })
    .from(appeals)
    .leftJoin(users, eq(users.id, appeals.decidedBy))
    .where(about(appeals, work))
    .orderBy(desc(appeals.madeAt), desc(appeals.id));
  return rows.map(({ appeal, decider }) => ({ ...appeal, decider }));
}

/** Open appeals of an organisation that somebody else than the learner may decide, those due first first. */
export async function listOpenAppeals(
  db: Db,
  { organizationId, deciderId }: { organizationId: string; deciderId: string },
  limit: number,
): Promise<Appeal[]> {
  return db
    .select()
    .from(appeals)
    .where(
      and(
        eq(appeals.organizationId, organizationId),
        eq(appeals.state, 'open'),
        ne(appeals.learnerId, deciderId),
        or(isNotNull(appeals.attemptId), isNotNull(appeals.sittingId)),
      ),
    )
    .orderBy(asc(appeals.dueAt), asc(appeals.id))
    .limit(limit);
}

/** Appeals of an organisation that were decided last. */
export async function listDecidedAppeals(
  db: Db,
  { organizationId, deciderId }: { organizationId: string; deciderId: string },
  limit: number,
): Promise<Appeal[]> {
  return db
    .select()
    .from(appeals)
    .where(
      and(
        eq(appeals.organizationId, organizationId),
        isNotNull(appeals.decidedAt),
        ne(appeals.learnerId, deciderId),
        or(isNotNull(appeals.attemptId), isNotNull(appeals.sittingId)),
      ),
    )
    .orderBy(desc(appeals.decidedAt), desc(appeals.id))
    .limit(limit);
}
