import { and, asc, desc, eq, notExists, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import type { Db } from '../client';
import { applications, users } from '../schema';
import type { Statement } from '../together';

export type Application = typeof applications.$inferSelect;
/** With the name of the candidate; null once they are erased. */
export type NamedApplication = Application & { candidate: string | null };

/** Whose an application is; undefined where there is none. */
export async function findApplicationWork(
  db: Db,
  id: string,
): Promise<{ learnerId: string; organizationId: string } | undefined> {
  const [row] = await db
    .select({ learnerId: applications.learnerId, organizationId: applications.organizationId })
    .from(applications)
    .where(eq(applications.id, id));
  return row;
}

export async function findApplication(
  db: Db,
  organizationId: string,
  id: string,
): Promise<NamedApplication | undefined> {
  const [row] = await named(db).where(and(eq(applications.id, id), eq(applications.organizationId, organizationId)));
  return row && { ...row.application, candidate: row.candidate };
}

/** Applications of an organisation in one state, those made first first. */
export async function listApplications(
  db: Db,
  organizationId: string,
  state: Application['state'],
  limit: number,
): Promise<NamedApplication[]> {
  const rows = await named(db)
    .where(and(eq(applications.organizationId, organizationId), eq(applications.state, state)))
    .orderBy(asc(applications.appliedAt), asc(applications.id))
    .limit(limit);
  return rows.map(({ application, candidate }) => ({ ...application, candidate }));
}

/** What somebody applied for under a scheme, the newest first. */
export async function listApplicationsOf(
  db: Db,
  { learnerId, organizationId, schemeId }: { learnerId: string; organizationId: string; schemeId: string },
): Promise<Application[]> {
  return db
    .select()
    .from(applications)
    .where(
      and(
        eq(applications.learnerId, learnerId),
        eq(applications.organizationId, organizationId),
        eq(applications.schemeId, schemeId),
      ),
    )
    .orderBy(desc(applications.appliedAt), asc(applications.id));
}

/** Adds an application, unless one of theirs under the scheme is open. */
export function addingApplication(
  db: Db,
  {
    id,
    organizationId,
    learnerId,
    schemeId,
    scheme,
    appliedAt,
  }: Omit<Application, 'state' | 'decidedBy' | 'decidedAt' | 'reason' | 'demo'>,
): Statement {
  const other = alias(applications, 'other');
  const column = <T>(name: keyof Application, value: T) =>
    sql<T>`${sql.param(value, applications[name])}`.as(applications[name].name);
  const open = db
    .select({ one: sql`1` })
    .from(other)
    .where(
      and(
        eq(other.learnerId, learnerId),
        eq(other.organizationId, organizationId),
        eq(other.schemeId, schemeId),
        eq(other.state, 'open'),
      ),
    );
  return db
    .insert(applications)
    .select(
      db
        .select({
          id: column('id', id),
          organizationId: column('organizationId', organizationId),
          learnerId: column('learnerId', learnerId),
          schemeId: column('schemeId', schemeId),
          scheme: column('scheme', scheme),
          state: column('state', 'open' as const),
          appliedAt: column('appliedAt', appliedAt),
          decidedBy: sql<null>`null`.as('decided_by'),
          decidedAt: sql<null>`null`.as('decided_at'),
          reason: sql<null>`null`.as('reason'),
          demo: column('demo', false),
        })
        .from(sql`(select 1)`)
        .where(notExists(open)),
    )
    .onConflictDoNothing();
}

/** Ends an open application: by a decision with its reason, or withdrawn by the candidate. */
export function endingApplication(
  db: Db,
  {
    id,
    ...end
  }: Pick<Application, 'id' | 'decidedBy' | 'decidedAt' | 'reason'> & { state: 'granted' | 'refused' | 'withdrawn' },
): Statement {
  return db
    .update(applications)
    .set(end)
    .where(and(eq(applications.id, id), eq(applications.state, 'open')));
}

function named(db: Db) {
  return db
    .select({ application: applications, candidate: users.name })
    .from(applications)
    .leftJoin(users, eq(users.id, applications.learnerId));
}
