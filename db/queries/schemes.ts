import { and, desc, eq } from 'drizzle-orm';
import type { Db } from '../client';
import { schemeVersions, users } from '../schema';
import type { Statement } from '../together';

export type SchemeVersion = typeof schemeVersions.$inferSelect;

/** A version with who made it; null once they are erased. */
export type SchemeVersionLine = SchemeVersion & { changer: string | null };

/** Every version that an organisation made of its schemes, newest first. */
export async function listSchemeVersions(db: Db, organizationId: string): Promise<SchemeVersion[]> {
  return db
    .select()
    .from(schemeVersions)
    .where(eq(schemeVersions.organizationId, organizationId))
    .orderBy(desc(schemeVersions.version));
}

/** What an organisation made of one scheme, newest first. */
export async function listVersionsOfScheme(
  db: Db,
  organizationId: string,
  schemeId: string,
): Promise<SchemeVersionLine[]> {
  const rows = await db
    .select({ version: schemeVersions, changer: users.name })
    .from(schemeVersions)
    .leftJoin(users, eq(users.id, schemeVersions.changedBy))
    .where(and(eq(schemeVersions.organizationId, organizationId), eq(schemeVersions.schemeId, schemeId)))
    .orderBy(desc(schemeVersions.version));
  return rows.map(({ version, changer }) => ({ ...version, changer }));
}

/** Adds a version; nothing happens where the organisation has one of that number already. */
export function addingSchemeVersion(db: Db, version: typeof schemeVersions.$inferInsert): Statement {
  return db.insert(schemeVersions).values(version).onConflictDoNothing();
}
