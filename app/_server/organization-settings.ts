import { cache } from 'react';
import { findOrganization } from '@/db/queries/organizations';
import { type OrganizationSettings, settingsSchema, usualSettings } from '@/lib/accounts/settings';
import { database } from './database';
import type { Session } from './session';

/** What an organisation has settled for itself, and the usual for the rest. */
export const readSettings = cache(async (organizationId: string): Promise<OrganizationSettings> => {
  const organization = await findOrganization(database(), organizationId);
  return settingsFrom(organization?.settings);
});

/** Settings of the organisation being worked in; the usual ones for somebody who is in none. */
export async function settingsFor(session: Pick<Session, 'actor'> | null): Promise<OrganizationSettings> {
  const organizationId = session?.actor.organizationId;
  return organizationId ? readSettings(organizationId) : usualSettings;
}

/** Settings out of their stored form. What this version cannot use gives way to the usual. */
export function settingsFrom(stored: unknown): OrganizationSettings {
  const parsed = settingsSchema.safeParse({ ...usualSettings, ...(stored as object | null | undefined) });
  if (!parsed.success) return usualSettings;
  const { timeZone } = parsed.data;
  return isTimeZone(timeZone) ? parsed.data : { ...parsed.data, timeZone: usualSettings.timeZone };
}

function isTimeZone(timeZone: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone });
    return true;
  } catch {
    return false;
  }
}
