import { addingAssignedClass, addingAssignedPerson } from '@/db/queries/assigned-people';
import { addingAssignment } from '@/db/queries/assignments';
import { isOpenClassOf } from '@/db/queries/classes';
import { addingLogEntry } from '@/db/queries/log-entries';
import { findNewestVersion, findSet, findSetsOrganization, freezingVersion, type SetVersion } from '@/db/queries/sets';
import { listLiveVersions } from '@/db/queries/written-questions';
import { claimThen } from '@/db/together';
import { pinQuestions } from '@/lib/sets/pin-questions';
import { idFromKey } from '../classes/id-from-key';
import { learnsIn } from '../classes/learns-in';
import { database } from '../database';
import { entryBy } from '../log-entry';
import { organizationOf, type SignedInPermit } from '../permit';
import { setReaderFor } from '../sets/set-reader';
import type { WantedAssignment } from './read-assignment-form';

/** What is not there, or not the organisation's, of what a form names. */
export type NotGiven = 'no-set' | 'empty-set' | 'no-question' | 'no-class' | 'no-person';

/** Gives a set in its newest version, which never changes again; once, however often the form is sent. */
export async function storeAssignment(
  permit: SignedInPermit,
  key: string,
  wanted: WantedAssignment,
): Promise<{ id: string } | { error: NotGiven }> {
  const db = database();
  const organizationId = organizationOf(permit);
  const { personId } = permit.session.actor;
  const version = await versionToGive(permit, wanted.setId);
  if (!version) return { error: 'no-set' };
  if (version.body.items.length === 0) return { error: 'empty-set' };
  const live = await listLiveVersions(db, organizationId);
  const body = pinQuestions(version.body, new Map(live.map((one) => [one.questionId, one.id])));
  if (!body) return { error: 'no-question' };
  const { classIds, personIds } = wanted;
  const open = await Promise.all(classIds.map((id) => isOpenClassOf(db, organizationId, id)));
  if (open.includes(false)) return { error: 'no-class' };
  const learn = await Promise.all(personIds.map((id) => learnsIn(organizationId, id)));
  if (learn.includes(false)) return { error: 'no-person' };
  const id = idFromKey(permit, key);
  const { title, rules, opensAt, closesAt } = wanted;
  const now = new Date();
  const row = { id, organizationId, setVersionId: version.id, title, rules, opensAt, closesAt };
  await claimThen(db, addingAssignment(db, { ...row, createdBy: personId, createdAt: now }), [
    freezingVersion(db, version.id, now, body),
    ...classIds.map((classId) => addingAssignedClass(db, { assignmentId: id, classId })),
    ...personIds.map((userId) => addingAssignedPerson(db, { assignmentId: id, userId, named: true })),
    addingLogEntry(db, entryBy(permit, 'assignment-given', { details: { assignment: id, set: version.setId } })),
  ]);
  return { id };
}

/** The newest version of a set in use that they see; undefined where there is none. */
async function versionToGive(permit: SignedInPermit, setId: string): Promise<SetVersion | undefined> {
  const db = database();
  const organizationId = organizationOf(permit);
  if ((await findSetsOrganization(db, setId, setReaderFor(permit.session.actor))) !== organizationId) return undefined;
  const set = await findSet(db, organizationId, setId);
  return set && !set.archivedAt ? findNewestVersion(db, setId) : undefined;
}
