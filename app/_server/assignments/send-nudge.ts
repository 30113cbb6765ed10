import type { ActResult } from '@/app/_ui/act-result';
import { listAssigned } from '@/db/queries/assigned-people';
import type { GivenSet } from '@/db/queries/assignments';
import { addingLogEntry } from '@/db/queries/log-entries';
import { addingNudge, countNudgesSince } from '@/db/queries/nudges';
import { claimThen } from '@/db/together';
import { idFromKey } from '../classes/id-from-key';
import { database } from '../database';
import { entryBy } from '../log-entry';
import type { SignedInPermit } from '../permit';
import { problem } from '../problems';
import { MOST_PEOPLE } from './change-assignment';
import { liveKey } from './live-keys';

/** More messages than this in so many minutes are no help to anybody. */
const MOST_NUDGES = 5;
const WITHIN_MS = 10 * 60_000;

/** Sends a short message to somebody at an assignment, once however often the form is sent. */
export async function storeNudge(
  permit: SignedInPermit,
  { id, organizationId }: GivenSet,
  { key, personKey, text }: { key: string; personKey: string; text: string },
): Promise<ActResult> {
  const db = database();
  const people = await listAssigned(db, { assignmentId: id, organizationId }, MOST_PEOPLE);
  const person = people.find((one) => liveKey(id, one.id) === personKey);
  if (!person) return { error: await problem('not-there') };
  const to = { assignmentId: id, userId: person.id };
  const now = new Date();
  const sent = await countNudgesSince(db, { ...to, since: new Date(now.getTime() - WITHIN_MS) });
  if (sent >= MOST_NUDGES) return { error: await problem('nudge-often') };
  const nudge = { id: idFromKey(permit, key), ...to, text, sentBy: permit.session.actor.personId, sentAt: now };
  const entry = entryBy(permit, 'nudge-sent', { personId: person.id, details: { assignment: id } });
  await claimThen(db, addingNudge(db, nudge), [addingLogEntry(db, entry)]);
  return { done: true };
}
