import { asc, eq, notExists, sql } from 'drizzle-orm';
import type { Db } from '../client';
import { organizations, users } from '../schema';
import type { Statement } from '../together';

export type Organization = typeof organizations.$inferSelect;
export type NewOrganization = typeof organizations.$inferInsert;

export function addingOrganization(db: Db, organization: NewOrganization): Statement {
  return db.insert(organizations).values(organization);
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

/** Every organisation of the installation, by name. */
export async function listOrganizations(db: Db): Promise<Organization[]> {
  return db.select().from(organizations).orderBy(asc(organizations.name), asc(organizations.id));
}

/** Sets an organisation's name and what it settles for itself. */
export function changingOrganization(
  db: Db,
  { id, ...changes }: Pick<NewOrganization, 'id'> & Pick<Organization, 'name' | 'settings'>,
): Statement {
  return db.update(organizations).set(changes).where(eq(organizations.id, id));
}
