import { addingCertificateEvent, findCertificate, listCertificateEvents } from '@/db/queries/certificates';
import { addingLogEntry } from '@/db/queries/log-entries';
import { listTrainingParts } from '@/db/queries/part-in-training';
import { claimThen } from '@/db/together';
import { standingFromEvents } from '@/lib/certificates/standing-from-events';
import { database } from '../database';
import { entryBy } from '../log-entry';
import { organizationOf, type SignedInPermit } from '../permit';
import type { ProblemCode } from '../problems';
import { randomId } from '../random-id';

/** What may be done about a certificate after it was issued, by how it stands. */
export const statusActs = {
  suspended: { from: ['in-force'], event: 'certificate-suspended' },
  lifted: { from: ['suspended'], event: 'certificate-lifted' },
  revoked: { from: ['in-force', 'suspended'], event: 'certificate-revoked' },
} as const;
export type StatusAct = keyof typeof statusActs;

/** What somebody may do about certificates that stand so. */
export function actsAt(code: string): StatusAct[] {
  return (Object.keys(statusActs) as StatusAct[]).filter((act) => statusActs[act].from.some((from) => from === code));
}

/**
 * Suspends a certificate, lifts its suspension or revokes it.
 *
 * @returns undefined once it is done, or what prevents it.
 */
export async function changeStatus(
  permit: SignedInPermit,
  { certificateId, act, reason }: { certificateId: string; act: StatusAct; reason: string },
): Promise<ProblemCode | undefined> {
  const row = await findCertificate(database(), certificateId);
  if (!row) return 'not-there';
  const { personId } = permit.session.actor;
  if (await isPartial(organizationOf(permit), personId, row.learnerId)) return 'certificate-partial';
  const events = await listCertificateEvents(database(), [certificateId]);
  const { code } = standingFromEvents(events);
  if (!actsAt(code).includes(act)) return 'certificate-stands-otherwise';
  const event = { id: randomId(), certificateId, kind: act, reason, by: personId, at: new Date() };
  const done = await claimThen(database(), addingCertificateEvent(database(), event, { after: events.length }), [
    addingLogEntry(
      database(),
      entryBy(permit, statusActs[act].event, { personId: row.learnerId, details: { certificate: certificateId } }),
    ),
  ]);
  return done ? undefined : 'certificate-stands-otherwise';
}

/** Whether somebody is the holder, or had a part in teaching, marking or observing them: such a person decides nothing here. */
export async function isPartial(organizationId: string, personId: string, learnerId: string): Promise<boolean> {
  if (personId === learnerId) return true;
  return (await listTrainingParts(database(), { organizationId, personId, learnerId })).length > 0;
}
