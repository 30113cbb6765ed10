import { asc, count, eq, notExists, sql } from 'drizzle-orm';
import type { Db } from '../client';
import { members, organizations, users } from '../schema';
import type { Statement } from '../together';

export type Organization = typeof organizations.$inferSelect;
export type NewOrganization = typeof organizations.$inferInsert;

export function addingOrganization(db: Db, organization: NewOrganization): Statement {
  return db.insert(organizations).values(organization);
}

/** Adds an organisation; nothing happens where another goes by its short name. */
export function addingUntakenOrganization(db: Db, organization: NewOrganization): Statement {
  return db.insert(organizations).values(organization).onConflictDoNothing({ target: organizations.slug });
}

/** Adds the first organisation; nothing happens once the installation has people. */
export function addingFirstOrganization(
  db: Db,
  { id, name, slug, createdAt }: { id: string; name: string; slug: string; createdAt: Date },
): Statement {
  const one = db
    .select({ one: sql`1`.as('one') })
    .from(sql`(select 1)`)
    .as('once');
  return db.insert(organizations).select(
    db
      .select({
        id: sql<string>`${id}`.as('id'),
        name: sql<string>`${name}`.as('name'),
        slug: sql<string>`${slug}`.as('slug'),
        logo: sql<null>`null`.as('logo'),
        metadata: sql<null>`null`.as('metadata'),
        settings: sql<null>`null`.as('settings'),
        demo: sql<boolean>`false`.as('demo'),
        createdAt: sql<Date>`${sql.param(createdAt, organizations.createdAt)}`.as('created_at'),
      })
      .from(one)
      .where(notExists(db.select({ one: sql`1` }).from(users))),
  );
}

/** An organisation; undefined when there is none. */
export async function findOrganization(db: Db, organizationId: string): Promise<Organization | undefined> {
  const [row] = await db.select().from(organizations).where(eq(organizations.id, organizationId));
  return row;
}

/** The organisation that goes by a short name; undefined when there is none. */
export async function findBySlug(db: Db, slug: string): Promise<Organization | undefined> {
  const [row] = await db.select().from(organizations).where(eq(organizations.slug, slug));
  return row;
}

export interface OrganizationLine {
  id: string;
  name: string;
  slug: string;
  demo: boolean;
  createdAt: Date;
  /** Deactivated ones too. */
  people: number;
}

/** The organisations of the installation, by name, with how many people each has. */
export async function listOrganizations(db: Db, limit: number): Promise<OrganizationLine[]> {
  const { id, name, slug, demo, createdAt } = organizations;
  return db
    .select({ id, name, slug, demo, createdAt, people: count(members.id) })
    .from(organizations)
    .leftJoin(members, eq(members.organizationId, organizations.id))
    .groupBy(id, name, slug, demo, createdAt)
    .orderBy(asc(name), asc(id))
    .limit(limit);
}

/** Whether anybody is of an organisation; undefined when there is no such organisation. */
export async function hasMembers(db: Db, organizationId: string): Promise<boolean | undefined> {
  const [row] = await db
    .select({ people: count(members.id) })
    .from(organizations)
    .leftJoin(members, eq(members.organizationId, organizations.id))
    .where(eq(organizations.id, organizationId))
    .groupBy(organizations.id);
  return row && row.people > 0;
}

/** Sets an organisation's name and what it settles for itself. */
export function changingOrganization(
  db: Db,
  { id, ...changes }: Pick<NewOrganization, 'id'> & Pick<Organization, 'name' | 'settings'>,
): Statement {
  return db.update(organizations).set(changes).where(eq(organizations.id, id));
}
