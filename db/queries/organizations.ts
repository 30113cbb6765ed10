import { asc, eq } from 'drizzle-orm';
import type { Db } from '../client';
import { organizations } from '../schema';
import type { Statement } from '../together';

export type Organization = typeof organizations.$inferSelect;
export type NewOrganization = typeof organizations.$inferInsert;

export function addingOrganization(db: Db, organization: NewOrganization): Statement {
  return db.insert(organizations).values(organization);
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
