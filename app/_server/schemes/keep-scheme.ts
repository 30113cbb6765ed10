import { revalidatePath } from 'next/cache';
import { addingLogEntry } from '@/db/queries/log-entries';
import { addingSchemeVersion } from '@/db/queries/schemes';
import { claimThen, type Statement } from '@/db/together';
import type { Scheme } from '@/lib/readiness/scheme';
import { database } from '../database';
import { entryBy } from '../log-entry';
import { organizationOf, type SignedInPermit } from '../permit';
import { randomId } from '../random-id';

/**
 * Keeps the next version of a scheme, and what goes with it.
 *
 * @returns false where somebody else made that version first: nothing is kept then.
 */
export async function keepScheme(
  permit: SignedInPermit,
  { scheme, note }: { scheme: Scheme; note: string },
  others: readonly Statement[] = [],
): Promise<boolean> {
  const { id: schemeId, version } = scheme;
  const organizationId = organizationOf(permit);
  const row = {
    ...{ id: randomId(), organizationId, schemeId, version, body: scheme, note },
    ...{ changedBy: permit.session.actor.personId, changedAt: new Date() },
  };
  const kept = await claimThen(database(), addingSchemeVersion(database(), row), [
    ...others,
    addingLogEntry(database(), entryBy(permit, 'scheme-changed', { details: { scheme: schemeId, version } })),
  ]);
  revalidatePath('/schemes', 'layout');
  return kept;
}
