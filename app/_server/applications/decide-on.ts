import { endingApplication } from '@/db/queries/applications';
import { addingLogEntry } from '@/db/queries/log-entries';
import { claimThen } from '@/db/together';
import { possibleVerdict } from '@/lib/readiness/may-decide';
import { database } from '../database';
import { entryBy } from '../log-entry';
import { organizationOf, type SignedInPermit } from '../permit';
import type { ProblemCode } from '../problems';
import { readApplication } from './read-application';

/** @returns undefined once it is decided, or what prevents it. */
export async function decideOn(
  permit: SignedInPermit,
  { applicationId, verdict, reason }: { applicationId: string; verdict: 'granted' | 'refused'; reason: string },
): Promise<ProblemCode | undefined> {
  const { personId } = permit.session.actor;
  const at = new Date();
  const read = await readApplication({ organizationId: organizationOf(permit), applicationId, personId }, at);
  if (!read) return 'not-there';
  if (read.conflicts.length > 0) return 'certificate-partial';
  if (!read.standing || possibleVerdict(read.standing.decision) !== verdict) return 'application-otherwise';
  const ending = endingApplication(database(), {
    ...{ id: applicationId, state: verdict, decidedBy: personId, decidedAt: at, reason },
  });
  const entry = entryBy(permit, 'application-decided', {
    personId: read.application.learnerId,
    details: { application: applicationId, verdict, scheme: read.application.schemeId },
  });
  const done = await claimThen(database(), ending, [addingLogEntry(database(), entry)]);
  return done ? undefined : 'application-decided';
}
