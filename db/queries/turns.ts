import { and, asc, eq, exists, inArray, isNotNull, isNull, lte, not, notExists, or, type SQL, sql } from 'drizzle-orm';
import type { Db } from '../client';
import { attempts, turns, turnTasks } from '../schema';
import type { Statement } from '../together';
import type { Learner } from './given';

export type Turn = typeof turns.$inferSelect;
export type TurnTask = typeof turnTasks.$inferSelect;

/** Whose a turn is; undefined where there is none. */
export async function findTurnWork(
  db: Db,
  id: string,
): Promise<{ learnerId: string; organizationId: string } | undefined> {
  const [row] = await db
    .select({ learnerId: turns.learnerId, organizationId: turns.organizationId })
    .from(turns)
    .where(eq(turns.id, id));
  return row;
}

/** One learner's turn; undefined when it is missing or someone else's. */
export async function findTurn(db: Db, learnerId: string, turnId: string): Promise<Turn | undefined> {
  const [turn] = await db
    .select()
    .from(turns)
    .where(and(eq(turns.id, turnId), eq(turns.learnerId, learnerId)));
  return turn;
}

/** A learner's turns in an organisation, at one assignment where it is named, in their order. */
export async function listTurns(db: Db, learner: Learner, assignmentId?: string): Promise<Turn[]> {
  const at = assignmentId === undefined ? undefined : eq(turns.assignmentId, assignmentId);
  return db
    .select()
    .from(turns)
    .where(and(isOf(learner), at))
    .orderBy(asc(turns.startedAt), asc(turns.number));
}

/** A learner's turns in every organisation. */
export async function listTurnsEverywhere(db: Db, learnerId: string): Promise<Turn[]> {
  return db.select().from(turns).where(eq(turns.learnerId, learnerId));
}

/** The turn that a case, or a sitting, is part of; undefined for one that is practised freely. */
export async function findTurnOf(
  db: Db,
  work: { attemptId: string } | { sittingId: string },
): Promise<Turn | undefined> {
  const rows =
    'sittingId' in work
      ? await db.select({ turn: turns }).from(turns).where(eq(turns.sittingId, work.sittingId))
      : await db
          .select({ turn: turns })
          .from(turnTasks)
          .innerJoin(turns, eq(turns.id, turnTasks.turnId))
          .where(eq(turnTasks.attemptId, work.attemptId));
  return rows[0]?.turn;
}

/** Which turns and cases go together, of a learner's turns. */
export async function listTurnsCases(db: Db, turnIds: readonly string[]): Promise<TurnTask[]> {
  if (turnIds.length === 0) return [];
  return db
    .select()
    .from(turnTasks)
    .where(and(inArray(turnTasks.turnId, [...turnIds]), isNotNull(turnTasks.attemptId)));
}

/** Turns that nobody handed in although their time was over at a moment. */
export async function listOverdueTurns(
  db: Db,
  { organizationId, learnerId, assignmentId }: { organizationId: string; learnerId?: string; assignmentId?: string },
  at: Date,
): Promise<Turn[]> {
  return db
    .select()
    .from(turns)
    .where(
      and(
        eq(turns.organizationId, organizationId),
        learnerId === undefined ? undefined : eq(turns.learnerId, learnerId),
        assignmentId === undefined ? undefined : eq(turns.assignmentId, assignmentId),
        isNull(turns.handedInAt),
        lte(turns.endsAt, at),
      ),
    );
}

/** Begins a turn. Changes nothing where it is there, where another has its number, or where one of theirs is still open. */
export function beginningTurn(db: Db, turn: typeof turns.$inferInsert): Statement {
  const open = db
    .select({ one: sql`1` })
    .from(turns)
    .where(
      and(eq(turns.assignmentId, turn.assignmentId), eq(turns.learnerId, turn.learnerId), isNull(turns.handedInAt)),
    );
  const column = <T>(name: keyof Turn, value: T) => sql<T>`${sql.param(value, turns[name])}`.as(turns[name].name);
  return db
    .insert(turns)
    .select(
      db
        .select({
          id: column('id', turn.id),
          assignmentId: column('assignmentId', turn.assignmentId),
          learnerId: column('learnerId', turn.learnerId),
          organizationId: column('organizationId', turn.organizationId),
          number: column('number', turn.number),
          sittingId: column('sittingId', null),
          demo: column('demo', turn.demo ?? false),
          startedAt: column('startedAt', turn.startedAt),
          endsAt: column('endsAt', turn.endsAt),
          handedInAt: column('handedInAt', null),
        })
        .from(sql`(select 1)`)
        .where(notExists(open)),
    )
    .onConflictDoNothing();
}

/** Gives a turn that is just being begun its sitting. */
export function givingSitting(db: Db, turnId: string, sittingId: string): Statement {
  return db.update(turns).set({ sittingId }).where(eq(turns.id, turnId));
}

export function addingTurnTask(db: Db, task: TurnTask): Statement {
  return db.insert(turnTasks).values(task);
}

/**
 * Holds a place of a turn for a case that is just being opened. Changes no row where the turn is over or missing, or where
 * something stands at the place.
 *
 * @param openAt  A turn that ended by then is over.
 */
export function holdingPlace(
  db: Db,
  { turnId, place, openAt }: { turnId: string; place: number; openAt: Date },
): Statement {
  const taken = db
    .select({ one: sql`1` })
    .from(turnTasks)
    .where(and(eq(turnTasks.turnId, turnId), eq(turnTasks.place, place)));
  return db
    .update(turns)
    .set({ id: turnId })
    .where(and(eq(turns.id, turnId), not(isOver(openAt)), notExists(taken)));
}

/** Hands a turn in; changes nothing where it is handed in already, or where it is missing or someone else's. */
export function handingInTurn(db: Db, learnerId: string, { turnId, at }: { turnId: string; at: Date }): Statement {
  return db
    .update(turns)
    .set({ handedInAt: at })
    .where(and(eq(turns.id, turnId), eq(turns.learnerId, learnerId), isNull(turns.handedInAt)));
}

/** Whether the attempt of a query around this one is part of a turn that takes nothing any more. */
export function isInTurnOver(db: Db, openAt: Date): SQL {
  const over = db
    .select({ one: sql`1` })
    .from(turnTasks)
    .innerJoin(turns, eq(turns.id, turnTasks.turnId))
    .where(and(eq(turnTasks.attemptId, attempts.id), isOver(openAt)));
  return exists(over);
}

function isOver(openAt: Date): SQL {
  return sql`(${or(isNotNull(turns.handedInAt), lte(turns.endsAt, openAt))})`;
}

function isOf({ learnerId, organizationId }: Learner): SQL | undefined {
  return and(eq(turns.learnerId, learnerId), eq(turns.organizationId, organizationId));
}
