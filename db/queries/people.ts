import { and, asc, count, eq, exists, inArray, like, max, notExists, or, type SQL, sql } from 'drizzle-orm';
import type { Role } from '../../lib/accounts/roles';
import type { Db } from '../client';
import { attempts, calls, classes, classPlaces, logEntries, members, users, verifications } from '../schema';
import type { Statement } from '../together';
import { ofLearnerIn } from './attempts';
import { countSittings } from './sittings';

/** A person as the list of an organisation's people shows them. */
export interface PersonLine {
  id: string;
  name: string;
  /** As stored. */
  address: string;
  /** As stored. */
  role: string;
  deactivatedAt: Date | null;
  erasureAskedAt: Date | null;
  /** When they last started a case here; null when never. */
  lastStartedAt: Date | null;
  /** Cases that they called here. */
  finished: number;
}

export interface PeopleFilter {
  /** Part of a name or of what somebody signs in with. */
  search?: string | undefined;
  role?: Role | undefined;
}

/** The people of an organisation, by name, deactivated ones last. */
export async function listPeople(
  db: Db,
  organizationId: string,
  { search, role }: PeopleFilter,
  limit: number,
): Promise<PersonLine[]> {
  const own = ofLearnerIn(organizationId, members.userId);
  const lastStarted = db
    .select({ value: max(attempts.createdAt) })
    .from(attempts)
    .where(own);
  const finished = db
    .select({ value: count() })
    .from(attempts)
    .innerJoin(calls, eq(calls.attemptId, attempts.id))
    .where(own);
  return db
    .select({
      id: users.id,
      name: users.name,
      address: users.email,
      role: members.role,
      deactivatedAt: members.deactivatedAt,
      erasureAskedAt: members.erasureAskedAt,
      lastStartedAt: sql<Date | null>`(${lastStarted})`.mapWith(attempts.createdAt),
      finished: sql<number>`(${finished})`,
    })
    .from(members)
    .innerJoin(users, eq(users.id, members.userId))
    .where(and(eq(members.organizationId, organizationId), named(search), role && holds(role)))
    .orderBy(sql`${members.deactivatedAt} is not null`, asc(users.name), asc(users.id))
    .limit(limit);
}

/** Signs that mean something to LIKE are looked for as they are. */
function named(search: string | undefined): SQL | undefined {
  if (!search) return undefined;
  const pattern = `%${search.replace(/[\\%_]/g, (sign) => `\\${sign}`)}%`;
  return or(sql`${users.name} like ${pattern} escape '\\'`, sql`${users.email} like ${pattern} escape '\\'`);
}

/** No role's name is part of another's. */
function holds(role: Role): SQL {
  return like(members.role, `%${role}%`);
}

export interface PlaceLine {
  userId: string;
  classId: string;
  name: string;
}

/** The classes that some people of an organisation are in. */
export async function listPlaces(db: Db, organizationId: string, userIds: readonly string[]): Promise<PlaceLine[]> {
  return db
    .select({ userId: classPlaces.userId, classId: classes.id, name: classes.name })
    .from(classPlaces)
    .innerJoin(classes, eq(classes.id, classPlaces.classId))
    .where(and(eq(classes.organizationId, organizationId), inArray(classPlaces.userId, [...userIds])))
    .orderBy(asc(classes.name));
}

/** When somebody last signed in, as an organisation's log tells it; null when it tells of no time. */
export async function findLastSignIn(db: Db, { organizationId, userId }: MemberKey): Promise<Date | null> {
  const [row] = await db
    .select({ at: max(logEntries.at) })
    .from(logEntries)
    .where(ofSignInsTo(organizationId, userId));
  return row?.at ?? null;
}

export function ofSignInsTo(organizationId: string, userId: string) {
  return and(
    eq(logEntries.personId, userId),
    eq(logEntries.event, 'signed-in'),
    eq(logEntries.organizationId, organizationId),
  );
}

export interface Held {
  attempts: number;
  finished: number;
  /** Times they sat down to questions. */
  sittings: number;
  classes: number;
}

/** How much an organisation holds of a person's. */
export async function countHeld(db: Db, { organizationId, userId }: MemberKey): Promise<Held> {
  const own = ofLearnerIn(organizationId, userId);
  const started = await db.$count(attempts, own);
  const open = await db.$count(
    attempts,
    and(own, notExists(db.select({ one: sql`1` }).from(calls).where(eq(calls.attemptId, attempts.id)))),
  );
  const places = await listPlaces(db, organizationId, [userId]);
  const sat = await countSittings(db, { organizationId, learnerId: userId });
  return { attempts: started, finished: started - open, sittings: sat, classes: places.length };
}

export interface MemberKey {
  organizationId: string;
  userId: string;
}

/** A member's own row, where somebody else is left who administers the organisation. */
function whereNotLastAdministrator(db: Db, { organizationId, userId }: MemberKey) {
  const others = db
    .select({ one: sql`1` })
    .from(sql`${members} as others`)
    .where(
      sql`others.organization_id = ${organizationId} and others.user_id <> ${userId} and others.role like '%administrator%' and others.deactivated_at is null`,
    );
  return and(eq(members.organizationId, organizationId), eq(members.userId, userId), exists(others));
}

/** Makes a member be what `role` says, unless that leaves nobody who administers the organisation. */
export function changingRoleSafely(db: Db, { role, ...key }: MemberKey & { role: string }): Statement {
  const self = and(eq(members.organizationId, key.organizationId), eq(members.userId, key.userId));
  return db
    .update(members)
    .set({ role })
    .where(role.includes('administrator') ? self : or(and(self, notAdministrator), whereNotLastAdministrator(db, key)));
}

const notAdministrator = sql`${members.role} not like '%administrator%'`;

/** Closes the organisation to a member, or opens it again; never to the last who administers it. */
export function changingDeactivated(db: Db, { at, ...key }: MemberKey & { at: Date | null }): Statement {
  const self = and(eq(members.organizationId, key.organizationId), eq(members.userId, key.userId));
  return db
    .update(members)
    .set({ deactivatedAt: at })
    .where(at ? or(and(self, notAdministrator), whereNotLastAdministrator(db, key)) : self);
}

/** Takes a member out of the organisation; never the last who administers it. */
export function removingMember(db: Db, key: MemberKey): Statement {
  const self = and(eq(members.organizationId, key.organizationId), eq(members.userId, key.userId));
  return db.delete(members).where(or(and(self, notAdministrator), whereNotLastAdministrator(db, key)));
}

/** Makes every open link to a new password or PIN of somebody's open nothing any more. */
export function removingResetLinks(db: Db, userId: string): Statement {
  return db.delete(verifications).where(eq(verifications.value, userId));
}

/** Others of the organisation than one, by name: those whom that one may turn out to be twice. */
export async function listOthers(
  db: Db,
  { organizationId, userId }: MemberKey,
  filter: PeopleFilter,
  limit: number,
): Promise<PersonLine[]> {
  const people = await listPeople(db, organizationId, filter, limit);
  return people.filter(({ id }) => id !== userId);
}
