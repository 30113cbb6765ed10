import { Temporal } from 'temporal-polyfill';
import { addingLogEntry } from '@/db/queries/log-entries';
import { addingSignOff } from '@/db/queries/sign-offs';
import { claimThen } from '@/db/together';
import { database } from '../database';
import { entryBy } from '../log-entry';
import type { SignedInPermit } from '../permit';
import type { Report } from './read-report';

/** When a sign-off of now ends: so many months on by the organisation's calendar, or the last day of a shorter month. */
export function endOfSignOff({ at, profile, settings }: Pick<Report, 'at' | 'profile' | 'settings'>): Date {
  const signed = Temporal.Instant.fromEpochMilliseconds(at.getTime()).toZonedDateTimeISO(settings.timeZone);
  return new Date(signed.add({ months: profile.validMonths }).epochMilliseconds);
}

/** Stores a sign-off once, with what the evidence said, and its line in the log. */
export async function storeSignOff(
  permit: SignedInPermit,
  { id, report, comment, endsAt }: { id: string; report: Report; comment: string; endsAt: Date },
): Promise<void> {
  const { person, profile, standing, check, at } = report;
  const row = {
    id,
    organizationId: person.organizationId,
    learnerId: person.userId,
    profileId: profile.id,
    profile,
    standing,
    comment,
    observationId: profile.handsOn && check ? check.id : null,
    signedBy: permit.session.actor.personId,
    signedAt: at,
    endsAt,
  };
  const entry = entryBy(permit, 'signed-off', {
    personId: person.userId,
    details: { signOff: id, profile: profile.id, version: profile.version },
  });
  await claimThen(database(), addingSignOff(database(), row), [addingLogEntry(database(), entry)]);
}
