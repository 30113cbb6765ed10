import {
  and,
  asc,
  desc,
  eq,
  exists,
  gt,
  inArray,
  isNotNull,
  isNull,
  lte,
  notExists,
  or,
  type SQL,
  sql,
} from 'drizzle-orm';
import type { IntakeOutcome } from '../../lib/readiness/intake-outcome';
import type { Db } from '../client';
import { attempts, intakes, intakeTasks } from '../schema';
import type { Statement } from '../together';

export type Intake = typeof intakes.$inferSelect;
export type NewIntake = typeof intakes.$inferInsert;
export type IntakeTask = typeof intakeTasks.$inferSelect;
export type IntakeEnd = NonNullable<Intake['end']>;

/** Whose new-hire checks, in which organisation. */
export interface IntakesOf {
  learnerId: string;
  organizationId: string;
}

export function addingIntake(db: Db, intake: NewIntake): Statement {
  return db.insert(intakes).values(intake);
}

/** Whose a new-hire check is; undefined where there is none. The door compares. */
export async function findIntakeWork(db: Db, id: string): Promise<IntakesOf | undefined> {
  const [row] = await db
    .select({ learnerId: intakes.learnerId, organizationId: intakes.organizationId })
    .from(intakes)
    .where(eq(intakes.id, id));
  return row;
}

/** One of an organisation's. */
export async function findIntake(db: Db, organizationId: string, id: string): Promise<Intake | undefined> {
  const [intake] = await db
    .select()
    .from(intakes)
    .where(and(eq(intakes.id, id), eq(intakes.organizationId, organizationId)));
  return intake;
}

/** The one that a link leads to, whether or not it still does; undefined where none ever had this token, or it was taken back. */
export async function findIntakeByToken(db: Db, tokenHash: string): Promise<Intake | undefined> {
  const [intake] = await db.select().from(intakes).where(eq(intakes.tokenHash, tokenHash));
  return intake;
}

/** The new-hire check that a case, or a sitting, is part of; undefined for other work. */
export async function findIntakeOf(
  db: Db,
  work: { attemptId: string } | { sittingId: string },
): Promise<Intake | undefined> {
  if ('sittingId' in work) {
    const [intake] = await db.select().from(intakes).where(eq(intakes.sittingId, work.sittingId));
    return intake;
  }
  const [row] = await db
    .select({ intake: intakes })
    .from(intakeTasks)
    .innerJoin(intakes, eq(intakes.id, intakeTasks.intakeId))
    .where(eq(intakeTasks.attemptId, work.attemptId));
  return row?.intake;
}

/** An organisation's, the newest first. */
export async function listIntakes(db: Db, organizationId: string, limit: number): Promise<Intake[]> {
  return db
    .select()
    .from(intakes)
    .where(eq(intakes.organizationId, organizationId))
    .orderBy(desc(intakes.createdAt), desc(intakes.id))
    .limit(limit);
}

/** Somebody's own in an organisation, the newest first. */
export async function listOwnIntakes(db: Db, of: IntakesOf): Promise<Intake[]> {
  return db
    .select()
    .from(intakes)
    .where(and(eq(intakes.learnerId, of.learnerId), eq(intakes.organizationId, of.organizationId)))
    .orderBy(desc(intakes.createdAt), desc(intakes.id));
}

/** Those of a person, of which nothing may be told yet. */
export async function listOpenIntakes(db: Db, learnerId: string, organizationId?: string): Promise<Intake[]> {
  const here = organizationId === undefined ? undefined : eq(intakes.organizationId, organizationId);
  return db
    .select()
    .from(intakes)
    .where(and(eq(intakes.learnerId, learnerId), here, isNotNull(intakes.startedAt), isNull(intakes.finishedAt)));
}

/** Begun ones whose time was over at a moment and that nobody finished. */
export async function listOverdueIntakes(
  db: Db,
  { organizationId, learnerId }: { organizationId: string; learnerId?: string },
  at: Date,
): Promise<Intake[]> {
  return db
    .select()
    .from(intakes)
    .where(
      and(
        eq(intakes.organizationId, organizationId),
        learnerId === undefined ? undefined : eq(intakes.learnerId, learnerId),
        isNull(intakes.finishedAt),
        lte(intakes.endsAt, at),
      ),
    );
}

/** What was given at each place, in order. */
export async function listIntakeTasks(db: Db, intakeId: string): Promise<IntakeTask[]> {
  return db.select().from(intakeTasks).where(eq(intakeTasks.intakeId, intakeId)).orderBy(asc(intakeTasks.place));
}

/** Cases of several new-hire checks, by attempt. */
export async function listIntakesCases(
  db: Db,
  intakeIds: readonly string[],
): Promise<{ intakeId: string; attemptId: string }[]> {
  if (intakeIds.length === 0) return [];
  const rows = await db
    .select({ intakeId: intakeTasks.intakeId, attemptId: intakeTasks.attemptId })
    .from(intakeTasks)
    .where(and(inArray(intakeTasks.intakeId, [...intakeIds]), isNotNull(intakeTasks.attemptId)));
  return rows.flatMap(({ intakeId, attemptId }) => (attemptId ? [{ intakeId, attemptId }] : []));
}

/** Pool tasks that somebody was given in any new-hire check. */
export async function listGivenPoolTasks(db: Db, learnerId: string): Promise<string[]> {
  const rows = await db
    .select({ id: intakeTasks.poolTaskId })
    .from(intakeTasks)
    .innerJoin(intakes, eq(intakes.id, intakeTasks.intakeId))
    .where(eq(intakes.learnerId, learnerId));
  return rows.map(({ id }) => id);
}

/** Begins it; changes nothing where it was begun, finished or taken back, or where its link has ended. */
export function beginningIntake(db: Db, { id, at, endsAt }: { id: string; at: Date; endsAt: Date }): Statement {
  return db
    .update(intakes)
    .set({ startedAt: at, endsAt })
    .where(
      and(
        eq(intakes.id, id),
        isNull(intakes.startedAt),
        isNull(intakes.finishedAt),
        isNotNull(intakes.tokenHash),
        gt(intakes.linkEndsAt, at),
      ),
    );
}

/** Gives one that is just being begun its sitting. */
export function givingIntakeSitting(db: Db, id: string, sittingId: string): Statement {
  return db.update(intakes).set({ sittingId }).where(eq(intakes.id, id));
}

/** Holds the next place of an open one; changes no row where it is over, or where something stands at the place. */
export function holdingIntakePlace(
  db: Db,
  { intakeId, place, openAt }: { intakeId: string; place: number; openAt: Date },
): Statement {
  const taken = db
    .select({ one: sql`1` })
    .from(intakeTasks)
    .where(and(eq(intakeTasks.intakeId, intakeId), eq(intakeTasks.place, place)));
  return db
    .update(intakes)
    .set({ id: intakeId })
    .where(and(eq(intakes.id, intakeId), isNull(intakes.finishedAt), gt(intakes.endsAt, openAt), notExists(taken)));
}

export function addingIntakeTask(db: Db, task: IntakeTask): Statement {
  return db.insert(intakeTasks).values(task);
}

/** Finishes it, once. */
export function finishingIntake(
  db: Db,
  { id, at, end, outcome }: { id: string; at: Date; end: IntakeEnd; outcome: IntakeOutcome },
): Statement {
  return db
    .update(intakes)
    .set({ finishedAt: at, end, outcome })
    .where(and(eq(intakes.id, id), isNull(intakes.finishedAt)));
}

/** Takes the link of one back that nobody has begun. */
export function takingBackIntake(db: Db, { id, organizationId }: { id: string; organizationId: string }): Statement {
  return db
    .update(intakes)
    .set({ tokenHash: null })
    .where(
      and(
        eq(intakes.id, id),
        eq(intakes.organizationId, organizationId),
        isNull(intakes.startedAt),
        isNotNull(intakes.tokenHash),
      ),
    );
}

/** Whether the attempt of a query around this one is part of a new-hire check that takes nothing any more. */
export function isInIntakeOver(db: Db, openAt: Date): SQL {
  const over = db
    .select({ one: sql`1` })
    .from(intakeTasks)
    .innerJoin(intakes, eq(intakes.id, intakeTasks.intakeId))
    .where(and(eq(intakeTasks.attemptId, attempts.id), or(isNotNull(intakes.finishedAt), lte(intakes.endsAt, openAt))));
  return exists(over);
}
