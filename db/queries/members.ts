import { and, asc, eq, isNull } from 'drizzle-orm';
import type { Db } from '../client';
import { members, organizations, users } from '../schema';
import type { Statement } from '../together';

/** An organisation that lets a person in, and as what. */
export interface Membership {
  organizationId: string;
  name: string;
  slug: string;
  role: string;
  demo: boolean;
}

/** Where a person is let in, by name. */
export async function listMemberships(db: Db, userId: string): Promise<Membership[]> {
  return db
    .select({
      organizationId: organizations.id,
      name: organizations.name,
      slug: organizations.slug,
      role: members.role,
      demo: organizations.demo,
    })
    .from(members)
    .innerJoin(organizations, eq(organizations.id, members.organizationId))
    .where(and(eq(members.userId, userId), isNull(members.deactivatedAt)))
    .orderBy(asc(organizations.name), asc(organizations.id));
}

/** An organisation that has a person, whether it lets them in or not. */
export interface HoldingOrganization {
  organizationId: string;
  name: string;
  erasureAskedAt: Date | null;
}

/** Every organisation that has a person, by name. */
export async function listHolding(db: Db, userId: string): Promise<HoldingOrganization[]> {
  return db
    .select({
      organizationId: organizations.id,
      name: organizations.name,
      erasureAskedAt: members.erasureAskedAt,
    })
    .from(members)
    .innerJoin(organizations, eq(organizations.id, members.organizationId))
    .where(eq(members.userId, userId))
    .orderBy(asc(organizations.name), asc(organizations.id));
}

export type Member = typeof members.$inferSelect;

/** A person as a member of an organisation, deactivated or not; undefined when they are not of it. */
export async function findMember(db: Db, organizationId: string, userId: string): Promise<Member | undefined> {
  const [row] = await db
    .select()
    .from(members)
    .where(and(eq(members.organizationId, organizationId), eq(members.userId, userId)));
  return row;
}

/** Whether somebody looks after the installation. */
export async function isInstallationsKeeper(db: Db, userId: string): Promise<boolean> {
  const [row] = await db.select({ keeper: users.keeper }).from(users).where(eq(users.id, userId));
  return row?.keeper ?? false;
}

/** Lets a person into an organisation, as what their roles say. */
export function addingMember(db: Db, member: typeof members.$inferInsert): Statement {
  return db.insert(members).values(member);
}

/** Makes a member be what `role` says (lib/accounts/roles.ts) and nothing else. */
export function changingRole(
  db: Db,
  { organizationId, userId, role }: { organizationId: string; userId: string; role: string },
): Statement {
  return db
    .update(members)
    .set({ role })
    .where(and(eq(members.organizationId, organizationId), eq(members.userId, userId)));
}

/** Notes when a member asked to be erased from an organisation; null takes the request back. */
export function changingErasureAsked(
  db: Db,
  { organizationId, userId, at }: { organizationId: string; userId: string; at: Date | null },
): Statement {
  return db
    .update(members)
    .set({ erasureAskedAt: at })
    .where(and(eq(members.organizationId, organizationId), eq(members.userId, userId)));
}
