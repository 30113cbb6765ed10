import { beginningIntake, givingIntakeSitting, type Intake } from '@/db/queries/intakes';
import { addingLogEntry } from '@/db/queries/log-entries';
import { addingSitting } from '@/db/queries/sittings';
import { claimThen } from '@/db/together';
import { database } from '../database';
import { randomId } from '../random-id';
import { secondsOf } from './clock';

/** Begins a new-hire check, once: its time runs from now on. @returns false where it was begun, taken back or its link has ended. */
export async function beginIntake(intake: Intake, now: Date): Promise<boolean> {
  const { id, learnerId, organizationId, demo } = intake;
  const db = database();
  const sittingId = randomId();
  const endsAt = new Date(now.getTime() + secondsOf(intake) * 1000);
  const sitting = { id: sittingId, learnerId, organizationId, key: `intake ${id}`, topics: [], demo };
  return claimThen(db, beginningIntake(db, { id, at: now, endsAt }), [
    addingSitting(db, { ...sitting, mode: 'check', createdAt: now, closesAt: endsAt }),
    givingIntakeSitting(db, id, sittingId),
    addingLogEntry(db, {
      ...{ at: now, organizationId, actorId: learnerId, event: 'intake-begun', personId: learnerId },
      details: { intake: id },
    }),
  ]);
}
