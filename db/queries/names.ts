import { and, asc, eq, inArray, isNull, like, or } from 'drizzle-orm';
import type { Role } from '../../lib/accounts/roles';
import type { Db } from '../client';
import { classes, members, users } from '../schema';

export interface Named {
  id: string;
  name: string;
}

/** Names of those of some people who are members of an organisation, deactivated or not. */
export async function listNames(db: Db, organizationId: string, userIds: readonly string[]): Promise<Named[]> {
  return db
    .select({ id: users.id, name: users.name })
    .from(members)
    .innerJoin(users, eq(users.id, members.userId))
    .where(and(eq(members.organizationId, organizationId), inArray(members.userId, [...userIds])));
}

/** The members of an organisation by name, deactivated or not. */
export async function listMemberNames(db: Db, organizationId: string, limit: number): Promise<Named[]> {
  return db
    .select({ id: users.id, name: users.name })
    .from(members)
    .innerJoin(users, eq(users.id, members.userId))
    .where(eq(members.organizationId, organizationId))
    .orderBy(asc(users.name), asc(users.id))
    .limit(limit);
}

/** Members of an organisation who are let in and hold one of some roles, by name. */
export async function listNamesHolding(db: Db, organizationId: string, roles: readonly Role[]): Promise<Named[]> {
  return db
    .select({ id: users.id, name: users.name })
    .from(members)
    .innerJoin(users, eq(users.id, members.userId))
    .where(
      and(
        eq(members.organizationId, organizationId),
        isNull(members.deactivatedAt),
        // No role's name is part of another's; with none asked for, nobody holds one.
        or(inArray(members.role, []), ...roles.map((role) => like(members.role, `%${role}%`))),
      ),
    )
    .orderBy(asc(users.name), asc(users.id));
}

/** Names of those of some classes that are an organisation's. */
export async function listClassNames(db: Db, organizationId: string, classIds: readonly string[]): Promise<Named[]> {
  return db
    .select({ id: classes.id, name: classes.name })
    .from(classes)
    .where(and(eq(classes.organizationId, organizationId), inArray(classes.id, [...classIds])));
}
