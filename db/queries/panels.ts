import { and, asc, desc, eq, exists, isNull, sql } from 'drizzle-orm';
import type { Db } from '../client';
import { panelJudges, panelRatings, panels, users } from '../schema';
import type { Statement } from '../together';

export type Panel = typeof panels.$inferSelect;
export type PanelRating = typeof panelRatings.$inferSelect;

/** Whose a panel is; undefined where there is none. */
export async function findPanelsOrganization(db: Db, id: string): Promise<string | undefined> {
  const [row] = await db.select({ organizationId: panels.organizationId }).from(panels).where(eq(panels.id, id));
  return row?.organizationId;
}

/** A panel of an organisation; undefined where it has none of that id. */
export async function findPanel(db: Db, organizationId: string, id: string): Promise<Panel | undefined> {
  const [row] = await db
    .select()
    .from(panels)
    .where(and(eq(panels.id, id), eq(panels.organizationId, organizationId)));
  return row;
}

/** The panels of an organisation, the newest first. */
export async function listPanels(db: Db, organizationId: string, limit: number): Promise<Panel[]> {
  return db
    .select()
    .from(panels)
    .where(eq(panels.organizationId, organizationId))
    .orderBy(desc(panels.createdAt), asc(panels.id))
    .limit(limit);
}

/** Who judges in a panel, by name; null once they are erased. */
export async function listJudges(db: Db, panelId: string): Promise<{ judgeId: string; name: string | null }[]> {
  return db
    .select({ judgeId: panelJudges.judgeId, name: users.name })
    .from(panelJudges)
    .leftJoin(users, eq(users.id, panelJudges.judgeId))
    .where(eq(panelJudges.panelId, panelId))
    .orderBy(asc(users.name), asc(panelJudges.judgeId));
}

export async function isJudge(db: Db, panelId: string, judgeId: string): Promise<boolean> {
  const rows = await db
    .select({ judgeId: panelJudges.judgeId })
    .from(panelJudges)
    .where(and(eq(panelJudges.panelId, panelId), eq(panelJudges.judgeId, judgeId)));
  return rows.length > 0;
}

/** Everything that the judges of a panel said. */
export async function listRatings(db: Db, panelId: string): Promise<PanelRating[]> {
  return db
    .select()
    .from(panelRatings)
    .where(eq(panelRatings.panelId, panelId))
    .orderBy(asc(panelRatings.judgeId), asc(panelRatings.round), asc(panelRatings.task));
}

/** Adds a panel once, by its id; its judges are to be added with it. */
export function addingPanel(
  db: Db,
  panel: typeof panels.$inferInsert,
  judgeIds: readonly string[],
): { claim: Statement; others: Statement[] } {
  return {
    claim: db.insert(panels).values(panel).onConflictDoNothing(),
    others: judgeIds.map((judgeId) => db.insert(panelJudges).values({ panelId: panel.id, judgeId })),
  };
}

/** The state in which a round takes ratings. */
export const stateOfRound = { 1: 'first-round', 2: 'second-round' } as const;
export type Round = keyof typeof stateOfRound;

/** Puts down what a judge expects, while the round lasts and only of who is a judge; a later rating replaces the earlier. */
export function rating(db: Db, { panelId, judgeId, round, task, expected, ratedAt }: PanelRating): Statement {
  const column = <T>(name: keyof PanelRating, value: T) =>
    sql<T>`${sql.param(value, panelRatings[name])}`.as(panelRatings[name].name);
  const judges = db
    .select({ one: sql`1` })
    .from(panelJudges)
    .where(and(eq(panelJudges.panelId, panelId), eq(panelJudges.judgeId, judgeId)));
  const goesOn = and(eq(panels.id, panelId), eq(panels.state, stateOfRound[round as Round]), exists(judges));
  return db
    .insert(panelRatings)
    .select(
      db
        .select({
          panelId: column('panelId', panelId),
          judgeId: column('judgeId', judgeId),
          round: column('round', round),
          task: column('task', task),
          expected: column('expected', expected),
          ratedAt: column('ratedAt', ratedAt),
        })
        .from(panels)
        .where(goesOn),
    )
    .onConflictDoUpdate({
      target: [panelRatings.panelId, panelRatings.judgeId, panelRatings.round, panelRatings.task],
      set: { expected, ratedAt },
    });
}

/** Moves a panel on from where it stands: to its second round, or to its end. */
export function movingPanelOn(
  db: Db,
  { id, from, to, at }: { id: string; from: Panel['state']; to: Panel['state']; at: Date },
): Statement {
  return db
    .update(panels)
    .set({ state: to, closedAt: to === 'closed' ? at : null })
    .where(and(eq(panels.id, id), eq(panels.state, from)));
}

/** Notes which version of the scheme took a closed panel's cut over. */
export function adoptingCut(db: Db, { id, version }: { id: string; version: number }): Statement {
  return db
    .update(panels)
    .set({ adoptedVersion: version })
    .where(and(eq(panels.id, id), eq(panels.state, 'closed'), isNull(panels.adoptedVersion)));
}
