import { and, asc, desc, eq, gt, isNotNull, isNull, notExists, or, type SQL, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import type { SetBody } from '../../lib/sets/set-body';
import type { Db } from '../client';
import { sets, setVersions, users } from '../schema';
import type { Statement } from '../together';

export type StoredSet = typeof sets.$inferSelect;
export type SetVersion = typeof setVersions.$inferSelect;

/** Who looks at sets: those that are not shared are seen by who made them, and by who sees all. */
export interface SetReader {
  personId: string;
  seesAll: boolean;
}

/** A set as a list shows it, by its newest version. */
export interface SetLine extends StoredSet {
  /** Null once they are erased. */
  maker: string | null;
  newest: SetVersion;
}

/** Whose a set is that somebody sees; undefined where there is none, or none for them. */
export async function findSetsOrganization(db: Db, id: string, reader: SetReader): Promise<string | undefined> {
  const [row] = await db
    .select({ organizationId: sets.organizationId })
    .from(sets)
    .where(and(eq(sets.id, id), isSeenBy(reader)));
  return row?.organizationId;
}

/** A set of an organisation, whether shared or not; undefined where it has none of that id. */
export async function findSet(db: Db, organizationId: string, setId: string): Promise<StoredSet | undefined> {
  const [row] = await db
    .select()
    .from(sets)
    .where(and(eq(sets.id, setId), eq(sets.organizationId, organizationId)));
  return row;
}

/** A version with the organisation of its set; undefined when there is none. */
export async function findVersion(
  db: Db,
  versionId: string,
): Promise<(SetVersion & { organizationId: string }) | undefined> {
  const [row] = await db
    .select({ version: setVersions, organizationId: sets.organizationId })
    .from(setVersions)
    .innerJoin(sets, eq(sets.id, setVersions.setId))
    .where(eq(setVersions.id, versionId));
  return row && { ...row.version, organizationId: row.organizationId };
}

/** The version that is worked on; undefined when there is no such set. */
export async function findNewestVersion(db: Db, setId: string): Promise<SetVersion | undefined> {
  const [row] = await db
    .select()
    .from(setVersions)
    .where(eq(setVersions.setId, setId))
    .orderBy(desc(setVersions.number))
    .limit(1);
  return row;
}

/** Every version of a set, newest first. */
export async function listSetVersions(db: Db, setId: string): Promise<SetVersion[]> {
  return db.select().from(setVersions).where(eq(setVersions.setId, setId)).orderBy(desc(setVersions.number));
}

/** Sets of an organisation that somebody sees, those changed last first. */
export async function listSets(
  db: Db,
  organizationId: string,
  reader: SetReader,
  { archived = false, limit }: { archived?: boolean; limit: number },
): Promise<SetLine[]> {
  const rows = await db
    .select({ set: sets, newest: setVersions, maker: users.name })
    .from(sets)
    .innerJoin(setVersions, and(eq(setVersions.setId, sets.id), isNewest(db)))
    .leftJoin(users, eq(users.id, sets.createdBy))
    .where(
      and(
        eq(sets.organizationId, organizationId),
        isSeenBy(reader),
        archived ? isNotNull(sets.archivedAt) : isNull(sets.archivedAt),
      ),
    )
    .orderBy(desc(setVersions.changedAt), asc(sets.id))
    .limit(limit);
  return rows.map(({ set, ...line }) => ({ ...set, ...line }));
}

/** Makes a set, whose first version is still to be added; nothing happens when it is there. */
export function addingSet(db: Db, made: typeof sets.$inferInsert): Statement {
  return db.insert(sets).values(made).onConflictDoNothing({ target: sets.id });
}

/** What a version of a set is to be. */
export interface NewVersion {
  id: string;
  setId: string;
  body: SetBody;
  writtenBy: string;
  at: Date;
}

/** Adds the first version of a set. */
export function addingFirstVersion(db: Db, { at, ...version }: NewVersion): Statement {
  return db.insert(setVersions).values({ ...version, number: 1, changedAt: at });
}

/**
 * Keeps what a set is to consist of, over the version that it was worked out from: changes that version, or adds the next
 * one where it was assigned meanwhile. Does nothing where there is a newer version already, or the set is archived.
 *
 * @param next  `id` is that of the version that may be added.
 */
export function savingVersion(db: Db, basedOn: string, next: NewVersion): Statement {
  const { id, setId, body, writtenBy, at } = next;
  const base = and(eq(setVersions.id, basedOn), eq(setVersions.setId, setId), isNewest(db), isInUse(db, setId));
  const changing = db
    .update(setVersions)
    .set({ body, writtenBy, changedAt: at })
    .where(and(base, isNull(setVersions.frozenAt)));
  const adding = db.insert(setVersions).select(
    db
      .select({
        id: sql`${id}`.as('id'),
        setId: setVersions.setId,
        number: sql`${setVersions.number} + 1`.as('number'),
        body: sql`${JSON.stringify(body)}`.as('body'),
        writtenBy: sql`${writtenBy}`.as('written_by'),
        changedAt: sql`${at.getTime()}`.as('changed_at'),
        frozenAt: sql`null`.as('frozen_at'),
      })
      .from(setVersions)
      .where(and(base, isNotNull(setVersions.frozenAt))),
  );
  return {
    run: () => {
      const changed = changing.run();
      return changed.changes > 0 ? changed : adding.run();
    },
  };
}

/**
 * Keeps a version as it is from now on: it is assigned. One that is frozen stays as it was.
 *
 * @param body  As it is assigned, where that says more than what was written.
 */
export function freezingVersion(db: Db, versionId: string, at: Date, body?: SetBody): Statement {
  return db
    .update(setVersions)
    .set({ frozenAt: at, ...(body && { body }) })
    .where(and(eq(setVersions.id, versionId), isNull(setVersions.frozenAt)));
}

/** A set, and who does something to it when. */
export interface SetAct {
  setId: string;
  reader: SetReader;
  at: Date;
}

/** Lets the organisation see a set. */
export function sharingSet(db: Db, { setId, reader, at }: SetAct): Statement {
  return db
    .update(sets)
    .set({ sharedAt: at })
    .where(and(eq(sets.id, setId), isSeenBy(reader), isNull(sets.sharedAt)));
}

/** Lets nobody see a set any more but who made it: only they, and who sees all, can take it from the others. */
export function unsharingSet(db: Db, { setId, reader }: SetAct): Statement {
  return db
    .update(sets)
    .set({ sharedAt: null })
    .where(and(eq(sets.id, setId), isTheirs(reader), isNotNull(sets.sharedAt)));
}

export function archivingSet(db: Db, { setId, reader, at }: SetAct): Statement {
  return db
    .update(sets)
    .set({ archivedAt: at })
    .where(and(eq(sets.id, setId), isSeenBy(reader), isNull(sets.archivedAt)));
}

export function restoringSet(db: Db, { setId, reader }: SetAct): Statement {
  return db
    .update(sets)
    .set({ archivedAt: null })
    .where(and(eq(sets.id, setId), isSeenBy(reader), isNotNull(sets.archivedAt)));
}

function isSeenBy(reader: SetReader): SQL | undefined {
  return reader.seesAll ? undefined : or(isNotNull(sets.sharedAt), isTheirs(reader));
}

function isTheirs({ personId, seesAll }: SetReader): SQL | undefined {
  return seesAll ? undefined : eq(sets.createdBy, personId);
}

function isNewest(db: Db): SQL {
  const newer = alias(setVersions, 'newer');
  return notExists(
    db
      .select({ one: sql`1` })
      .from(newer)
      .where(and(eq(newer.setId, setVersions.setId), gt(newer.number, setVersions.number))),
  );
}

function isInUse(db: Db, setId: string): SQL {
  const archived = db
    .select({ one: sql`1` })
    .from(sets)
    .where(and(eq(sets.id, setId), isNotNull(sets.archivedAt)));
  return notExists(archived);
}
