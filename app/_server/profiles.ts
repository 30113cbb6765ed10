import type { Db } from '@/db/client';
import { listNewestProfiles, type NewestProfile } from '@/db/queries/role-profiles';
import type { RoleProfile } from '@/lib/readiness/profile';
import { catalogue } from './catalogue';

/** A role profile as an organisation has it. */
export interface HeldProfile {
  profile: RoleProfile;
  /** What the organisation made of it last; undefined for one that is as it came. */
  stored?: NewestProfile;
  /** The organisation does without it. */
  retired: boolean;
}

/** The version that the next one follows. */
export function versionOf({ profile, stored }: HeldProfile): number {
  return stored?.version ?? profile.version;
}

/** Role profiles that people of an organisation are held against, from what takes least to what takes most. */
export async function listProfiles(db: Db, organizationId: string): Promise<RoleProfile[]> {
  const held = await listHeldProfiles(db, organizationId);
  return held.filter(({ retired }) => !retired).map(({ profile }) => profile);
}

/** One of them; undefined where the organisation has none of that id, or does without it. */
export async function findProfile(db: Db, organizationId: string, profileId: string): Promise<RoleProfile | undefined> {
  return (await listProfiles(db, organizationId)).find(({ id }) => id === profileId);
}

/** One of them, retired or not. */
export async function findHeldProfile(
  db: Db,
  organizationId: string,
  profileId: string,
): Promise<HeldProfile | undefined> {
  return (await listHeldProfiles(db, organizationId)).find(({ profile }) => profile.id === profileId);
}

/** All that there are, with those that the organisation does without. */
export async function listHeldProfiles(db: Db, organizationId: string): Promise<HeldProfile[]> {
  const ready = catalogue().profiles;
  const stored = new Map((await listNewestProfiles(db, organizationId)).map((row) => [row.profileId, row]));
  const ids = new Set([...ready.keys(), ...stored.keys()]);
  return [...ids]
    .flatMap((id) => heldProfile(ready.get(id), stored.get(id)) ?? [])
    .sort((a, b) => demandOf(a.profile) - demandOf(b.profile) || a.profile.id.localeCompare(b.profile.id));
}

function heldProfile(ready: RoleProfile | undefined, stored: NewestProfile | undefined): HeldProfile | undefined {
  if (!stored) return ready && { profile: ready, retired: false };
  const profile = stored.lastBody ?? ready;
  return profile && { profile, stored, retired: stored.body === null };
}

/** More topics and higher lines ask for more. */
function demandOf({ topics }: RoleProfile): number {
  return topics.reduce((sum, { cut }) => sum + cut + 6, 0);
}
