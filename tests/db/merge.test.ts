import { eq, getTableName } from 'drizzle-orm';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { listActs } from '@/db/queries/acts';
import { listAttempts, recordAttempt } from '@/db/queries/attempts';
import { findCall } from '@/db/queries/calls';
import { addingClass, addingClassPlace } from '@/db/queries/classes';
import { addingInvitation, findInvitation } from '@/db/queries/invitations';
import { mergingMembers } from '@/db/queries/leaving';
import { addingLogEntry } from '@/db/queries/log-entries';
import { listManualMarks } from '@/db/queries/manual-marks';
import { addingMember, findMember } from '@/db/queries/members';
import { countHeld } from '@/db/queries/people';
import { findPicture } from '@/db/queries/pictures';
import { listSittingAnswers } from '@/db/queries/sitting-answers';
import { listSittings } from '@/db/queries/sittings';
import { findUser } from '@/db/queries/users';
import { listVersions } from '@/db/queries/written-questions';
import {
  appeals,
  assignedPeople,
  assignments,
  classPlaces,
  comments,
  nudges,
  overrides,
  regrades,
  secondMarks,
  sets,
  setVersions,
  turns,
} from '@/db/schema';
import { claimThen, together } from '@/db/together';
import { anAttempt } from '../support/attempt-rows';
import { aMember } from '../support/people-rows';
import {
  addHeld,
  addPersonOf,
  addSignedIn,
  anInvitation,
  dayAfter,
  everything,
  idOfWhatStays,
  listTablesSaying,
  makeShopAndCollege,
  noon,
} from '../support/shop-rows';
import { addTurn } from '../support/teaching-rows';
import { testDatabase } from '../support/test-database';

const organizationId = 'harbour';
let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await makeShopAndCollege(db);
  await addPersonOf(db, 'ada', { harbour: 'administrator' });
  await addPersonOf(db, 'kit', { harbour: 'learner' });
  await addPersonOf(db, 'twin', { harbour: 'shop-lead' }, { name: 'Kit Twinwell', email: 'twinwell@harbour.example' });
  // Two devices may have made the same key.
  await addHeld(db, 'kit', organizationId, 'same-key');
  await addHeld(db, 'twin', organizationId, 'same-key');
  await addSignedIn(db, 'kit', organizationId);
  await addSignedIn(db, 'twin', organizationId);
});

async function merge(doubleId = 'twin', where = organizationId): Promise<boolean> {
  const both = { organizationId: where, keptId: 'kit', doubleId, role: 'learner,shop-lead' };
  const { claim, others } = mergingMembers(db, both);
  const entry = { at: noon, organizationId: where, actorId: 'ada', event: 'people-merged' as const, personId: 'kit' };
  return claimThen(db, claim, [...others, addingLogEntry(db, { ...entry, details: { double: doubleId } })]);
}

describe('who is kept', () => {
  test('has the work of both, with what was done and called in it', async () => {
    expect(await merge()).toBe(true);
    const attempts = await listAttempts(db, { learnerId: 'kit', organizationId }, 10);
    expect(attempts.map(({ id }) => id).sort()).toEqual(['kit-case-at-harbour', 'twin-case-at-harbour']);
    expect(await listActs(db, 'kit', 'twin-case-at-harbour')).toHaveLength(1);
    expect((await findCall(db, 'kit', 'twin-case-at-harbour'))?.total).toBe(71);
    expect(await countHeld(db, { organizationId, userId: 'kit' })).toEqual({
      attempts: 2,
      finished: 2,
      sittings: 2,
      classes: 1,
    });
  });

  test('has the sittings of both, with what was answered and marked in them', async () => {
    await merge();
    const lines = await listSittings(db, { learnerId: 'kit', organizationId }, 10);
    expect(lines.map(({ id, marked }) => [id, marked]).sort()).toEqual([
      ['sitting-of-kit-at-harbour', 1],
      ['sitting-of-twin-at-harbour', 1],
    ]);
    expect(await listSittingAnswers(db, 'kit', 'sitting-of-twin-at-harbour')).toHaveLength(1);
  });

  test('stands as who wrote, drew and marked what the double did', async () => {
    await merge();
    const [version] = await listVersions(db, idOfWhatStays('twin', 'harbour'));
    expect(version?.writtenBy).toBe('kit');
    expect((await findPicture(db, idOfWhatStays('twin', 'harbour')))?.uploadedBy).toBe('kit');
    const [given] = await listManualMarks(db, { sittingId: 'sitting-of-twin-at-harbour', place: 1 });
    expect(given?.markedBy).toBe('kit');
  });

  test('has the turns of both at an assignment, those of the double after their own, and what the double gave', async () => {
    const assignmentId = `assignment-${idOfWhatStays('kit', 'harbour')}`;
    await addTurn(db, { id: 'second-of-twin', assignmentId, learnerId: 'twin', organizationId });
    await merge();
    const had = await db.select().from(turns).where(eq(turns.assignmentId, assignmentId)).orderBy(turns.number);
    expect(had.map(({ id, learnerId, number }) => [id, learnerId, number])).toEqual([
      ['turn-of-kit-at-harbour', 'kit', 1],
      ['second-of-twin', 'kit', 2],
    ]);
    const given = await db.select().from(assignedPeople).where(eq(assignedPeople.userId, 'kit'));
    expect(given).toHaveLength(2);
    for (const table of [sets, setVersions, assignments, nudges, comments, overrides, secondMarks, appeals, regrades])
      expect(JSON.stringify(await db.select().from(table)), getTableName(table)).not.toContain('"twin"');
  });

  test('is what both were, and signs in as before', async () => {
    const before = await findUser(db, 'kit');
    await merge();
    expect((await findMember(db, organizationId, 'kit'))?.role).toBe('learner,shop-lead');
    expect(await findUser(db, 'kit')).toEqual(before);
    expect(await listTablesSaying(db, 'hash of kit')).toEqual(['accounts']);
    expect(await listTablesSaying(db, 'token of kit')).toEqual(['sessions']);
  });

  test('has the double’s places in classes, and their own as it was where both had one', async () => {
    const evenings = { id: 'evenings', organizationId, name: 'Evenings', createdAt: noon };
    await together(db, [
      addingClass(db, evenings),
      addingClassPlace(db, { classId: 'evenings', userId: 'twin', joinedAt: dayAfter }),
    ]);
    await merge();
    const places = await db.select().from(classPlaces).where(eq(classPlaces.userId, 'kit'));
    expect(places).toContainEqual({ classId: 'evenings', userId: 'kit', joinedAt: dayAfter });
    expect(places).toContainEqual({ classId: 'harbour-class', userId: 'kit', joinedAt: noon });
    expect(places).toHaveLength(2);
  });

  test('has the invitations that the double made', async () => {
    await merge();
    expect((await findInvitation(db, 'by-twin-at-harbour'))?.inviterId).toBe('kit');
  });

  test('may start a case again with a key that the double used', async () => {
    await merge();
    const again = await recordAttempt(db, anAttempt({ id: 'new', learnerId: 'kit', organizationId, key: 'same-key' }));
    expect(again?.id).toBe('kit-case-at-harbour');
  });
});

describe('a double whom no other organisation has', () => {
  test('is gone, with their sign-in, their sessions and their links, and the log alone has their id', async () => {
    await together(db, [addingInvitation(db, anInvitation({ id: 'to-twin', email: 'twinwell@harbour.example' }))]);
    await merge();
    expect(await findUser(db, 'twin')).toBeUndefined();
    expect(await listTablesSaying(db, 'Twinwell')).toEqual([]);
    for (const secret of ['hash of twin', 'token of twin', 'reset-password:twin'])
      expect(await listTablesSaying(db, secret)).toEqual([]);
    expect(await listTablesSaying(db, '"double\\":\\"twin')).toEqual(['log_entries']);
  });

  test('may have been deactivated', async () => {
    await addPersonOf(db, 'old', { harbour: 'learner' }, { deactivatedAt: noon });
    expect(await merge('old')).toBe(true);
    expect(await findUser(db, 'old')).toBeUndefined();
    expect((await findMember(db, organizationId, 'kit'))?.deactivatedAt).toBeNull();
  });
});

describe('a double whom another organisation has too', () => {
  beforeEach(async () => {
    await together(db, [
      addingMember(db, aMember({ id: 'twin-there', organizationId: 'college', userId: 'twin', role: 'instructor' })),
    ]);
    await addHeld(db, 'twin', 'college', 'there');
  });

  test('keeps their sign-in and what is there', async () => {
    const before = await everything(db);
    await merge();
    const after = await everything(db);
    for (const table of ['users', 'accounts', 'sessions', 'verifications']) expect(after[table]).toEqual(before[table]);
    expect(await findMember(db, organizationId, 'twin')).toBeUndefined();
    expect(await findMember(db, 'college', 'twin')).toMatchObject({ role: 'instructor' });
    expect(await countHeld(db, { organizationId: 'college', userId: 'twin' })).toMatchObject({
      attempts: 1,
      classes: 1,
    });
    expect((await findInvitation(db, 'by-twin-at-college'))?.inviterId).toBe('twin');
  });

  test('leaves nothing here, and whoever is kept has nothing there', async () => {
    await merge();
    expect(await countHeld(db, { organizationId, userId: 'twin' })).toEqual({
      attempts: 0,
      finished: 0,
      sittings: 0,
      classes: 0,
    });
    expect(await countHeld(db, { organizationId: 'college', userId: 'kit' })).toMatchObject({
      attempts: 0,
      classes: 0,
    });
    expect(await findMember(db, 'college', 'kit')).toBeUndefined();
  });
});

test('a double who is a keeper goes on looking after the installation', async () => {
  await addPersonOf(db, 'kim', { harbour: 'administrator' }, { keeper: true });
  expect(await merge('kim')).toBe(true);
  expect(await findUser(db, 'kim')).toMatchObject({ keeper: true });
});

test('another organisation merges nobody of this one', async () => {
  const before = await everything(db);
  expect(await merge('twin', 'college')).toBe(false);
  expect(await everything(db)).toEqual(before);
});
