import { revalidatePath } from 'next/cache';
import type { ActResult } from '@/app/_ui/act-result';
import { listAssigned } from '@/db/queries/assigned-people';
import { findAssignment, type GivenSet } from '@/db/queries/assignments';
import { addingLogEntry } from '@/db/queries/log-entries';
import { listTurnLines, movingTurnsEnd } from '@/db/queries/turn-ends';
import { claimThen, type Statement } from '@/db/together';
import type { LogDetails, LogEvent } from '@/lib/accounts/log-events';
import { endsAt, type Timed } from '@/lib/assignments/phase';
import { database } from '../database';
import { entryBy } from '../log-entry';
import { organizationOf, type SignedInPermit } from '../permit';
import { problem } from '../problems';

/** More people than one assignment is given to. */
export const MOST_PEOPLE = 1000;

/** The assignment that a form names, which the door has found already. @throws when it is gone since. */
export async function assignmentFor(permit: SignedInPermit, form: unknown): Promise<GivenSet> {
  const id = form instanceof FormData ? form.get('assignmentId') : undefined;
  const found =
    typeof id === 'string'
      ? await findAssignment(database(), { assignmentId: id, organizationId: organizationOf(permit) })
      : undefined;
  if (!found) throw new Error('The assignment that the door let in to is gone');
  return found;
}

export interface AssignmentChange {
  event: LogEvent;
  assignmentId: string;
  personId?: string;
  details?: LogDetails;
  claim: Statement;
  others?: readonly Statement[];
}

/** Changes an assignment and tells the log of it. Where somebody else was first, the page is read again. */
export async function changeAssignment(
  permit: SignedInPermit,
  { event, assignmentId, personId, details, claim, others = [] }: AssignmentChange,
): Promise<ActResult> {
  const entry = entryBy(permit, event, {
    personId: personId ?? null,
    details: { assignment: assignmentId, ...details },
  });
  const happened = await claimThen(database(), claim, [...others, addingLogEntry(database(), entry)]);
  revalidatePath(`/assignments/${assignmentId}`);
  return happened ? { done: true } : { error: await problem('assignment-changed-meanwhile') };
}

/**
 * Statements that move the ends of turns that go on to where other rules put them.
 *
 * @param extraTimes  Shares of the minutes on top that differ from what is stored.
 */
export async function movedEnds(
  { id, organizationId }: Pick<GivenSet, 'id' | 'organizationId'>,
  under: Timed,
  now: Date,
  extraTimes: ReadonlyMap<string, number> = new Map(),
): Promise<Statement[]> {
  const db = database();
  const people = await listAssigned(db, { assignmentId: id, organizationId }, MOST_PEOPLE);
  const stored = new Map(people.map((person) => [person.id, person.extraTime]));
  const lines = await listTurnLines(db, id);
  return lines
    .filter((line) => !line.handedInAt && line.endsAt > now)
    .flatMap(({ id: turnId, learnerId, startedAt }) => {
      const extraTime = extraTimes.get(learnerId) ?? stored.get(learnerId) ?? 0;
      return movingTurnsEnd(db, { turnId, endsAt: new Date(endsAt(under, startedAt, extraTime)), now });
    });
}
