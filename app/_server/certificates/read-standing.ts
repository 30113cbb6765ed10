import { findCertificate, listCertificateEvents, type NamedCertificate } from '@/db/queries/certificates';
import { findOrganization } from '@/db/queries/organizations';
import { type CertificateEvent, standingFromEvents } from '@/lib/certificates/standing-from-events';
import type { Standing } from '@/lib/certificates/verify-certificate';
import { database } from '../database';

/** A certificate as it is on record. */
export interface OnRecord {
  row: NamedCertificate;
  /** What befell it, the oldest first. */
  events: readonly CertificateEvent[];
  standing: Standing;
  organizationName: string;
}

/** What is on record of a certificate; undefined where nothing is. */
export async function readOnRecord(id: string): Promise<OnRecord | undefined> {
  const row = await findCertificate(database(), id);
  if (!row) return undefined;
  const events = await listCertificateEvents(database(), [id]);
  const organization = await findOrganization(database(), row.organizationId);
  return { row, events, standing: standingFromEvents(events), organizationName: organization?.name ?? '' };
}
