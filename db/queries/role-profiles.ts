import { and, asc, desc, eq } from 'drizzle-orm';
import type { Db } from '../client';
import { roleProfiles } from '../schema';
import type { Statement } from '../together';

export type StoredProfile = typeof roleProfiles.$inferSelect;

export interface NewestProfile extends StoredProfile {
  /** As it was last written down: that of the version before where the organisation does without it now. */
  lastBody: StoredProfile['body'];
}

/** The newest version of each role profile that an organisation wrote or changed. One without a body is done without. */
export async function listNewestProfiles(db: Db, organizationId: string): Promise<NewestProfile[]> {
  const rows = await db
    .select()
    .from(roleProfiles)
    .where(eq(roleProfiles.organizationId, organizationId))
    .orderBy(asc(roleProfiles.profileId), asc(roleProfiles.version));
  const newest = new Map<string, NewestProfile>();
  for (const row of rows)
    newest.set(row.profileId, { ...row, lastBody: row.body ?? newest.get(row.profileId)?.lastBody ?? null });
  return [...newest.values()];
}

/** Every version of one profile, the newest first. */
export async function listProfileVersions(
  db: Db,
  { organizationId, profileId }: { organizationId: string; profileId: string },
): Promise<StoredProfile[]> {
  return db
    .select()
    .from(roleProfiles)
    .where(and(eq(roleProfiles.organizationId, organizationId), eq(roleProfiles.profileId, profileId)))
    .orderBy(desc(roleProfiles.version));
}

/** Adds a version; changes nothing where there is one of that number already. */
export function addingProfile(db: Db, row: StoredProfile): Statement {
  return db.insert(roleProfiles).values(row).onConflictDoNothing();
}
