import { beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { addingInvitation, findInvitation } from '@/db/queries/invitations';
import { erasingMember } from '@/db/queries/leaving';
import { NOBODY } from '@/db/queries/leaving-questions';
import { addingLogEntry, listLogEntries } from '@/db/queries/log-entries';
import { addingManualMark, listManualMarks } from '@/db/queries/manual-marks';
import { findUser } from '@/db/queries/users';
import { listVersions } from '@/db/queries/written-questions';
import { logEntries } from '@/db/schema';
import { claimThen, together } from '@/db/together';
import {
  addHeld,
  addPersonOf,
  addSignedIn,
  anInvitation,
  everything,
  idOfWhatStays,
  listTables,
  listTablesSaying,
  makeShopAndCollege,
  noon,
} from '../support/shop-rows';
import { testDatabase } from '../support/test-database';

/** Tables in which nobody is named: of whole organisations, of hashes, and the database's own. */
const OF_NOBODY = [
  ...['__drizzle_migrations', 'sqlite_sequence'],
  ...['assigned_classes', 'classes', 'organizations', 'pool_tasks', 'refused_tries'],
];
const kit = { name: 'Kit Quillfeather', email: 'quill@harbour.example' };
let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await makeShopAndCollege(db);
  await addPersonOf(db, 'ada', { harbour: 'administrator' });
});

/** Somebody of the harbour, of whom every table tells. */
async function addKit(roles: Record<string, string>, changes: { keeper?: boolean } = {}): Promise<void> {
  await addPersonOf(db, 'kit-id', roles, { ...kit, ...changes });
  for (const organizationId of Object.keys(roles)) await addHeld(db, 'kit-id', organizationId, organizationId);
  await addSignedIn(db, 'kit-id', 'harbour');
  await together(db, [
    addingInvitation(db, anInvitation({ id: 'to-kit', email: kit.email, expiresAt: noon })),
    addingInvitation(db, anInvitation({ id: 'to-kit-too', email: kit.email, organizationId: 'college' })),
    addingLogEntry(db, anEntry('before', 'kit-id')),
  ]);
}

const anEntry = (note: string, personId: string) => ({
  at: noon,
  organizationId: 'harbour',
  actorId: 'ada',
  event: 'roles-set' as const,
  personId,
  details: { note },
});

async function erase(userId: string, organizationId = 'harbour'): Promise<boolean> {
  const { claim, others } = erasingMember(db, { organizationId, userId }, 'ada');
  const entry = addingLogEntry(db, { ...anEntry('', userId), event: 'person-erased', organizationId });
  return claimThen(db, claim, [...others, entry]);
}

describe('somebody whom no other organisation has', () => {
  beforeEach(() => addKit({ harbour: 'learner,instructor' }));

  test('stands before in every table that tells of people', async () => {
    const ofPeople = (await listTables(db)).filter((table) => !OF_NOBODY.includes(table));
    expect(await listTablesSaying(db, 'kit-id')).toEqual(ofPeople);
    expect(await listTablesSaying(db, 'Quillfeather')).toEqual(['users']);
    expect(await listTablesSaying(db, kit.email)).toEqual(['invitations', 'users']);
  });

  test('is erased with everything but an id in the log, which leads to nobody', async () => {
    expect(await erase('kit-id')).toBe(true);
    expect(await listTablesSaying(db, 'Quillfeather')).toEqual([]);
    expect(await listTablesSaying(db, kit.email)).toEqual([]);
    const { invitations, log_entries: log, ...rest } = await everything(db);
    expect(JSON.stringify(rest)).not.toContain('kit-id');
    expect(JSON.stringify(log)).toContain('kit-id');
    expect(JSON.stringify(invitations)).not.toContain('"inviter_id":"kit-id"');
  });

  test('leaves the invitations that they made to whoever erased them', async () => {
    await erase('kit-id');
    expect(await findInvitation(db, 'by-kit-id-at-harbour')).toMatchObject({ inviterId: 'ada', status: 'pending' });
  });

  test('leaves a question that they had not finished to whoever erased them, and a mark that they gave without a name', async () => {
    await addPersonOf(db, 'ben', { harbour: 'learner' });
    await addHeld(db, 'ben', 'harbour', 'here');
    const of = { sittingId: 'sitting-of-ben-at-harbour', place: 1 };
    const given = { ...of, seq: 2, score: 0, comment: 'Too short', markedBy: 'kit-id', markedAt: noon };
    await together(db, [addingManualMark(db, given)]);
    await erase('kit-id');
    expect(await listVersions(db, idOfWhatStays('kit-id', 'harbour'))).toMatchObject([
      { writtenBy: 'ada', state: 'draft' },
    ]);
    const marks = await listManualMarks(db, of);
    expect(marks.map(({ comment, markedBy }) => [comment, markedBy])).toEqual([
      ['Too short', NOBODY],
      ['', 'ben'],
    ]);
  });

  test('leaves what is said of them in the log as it was, with one entry more', async () => {
    await erase('kit-id');
    const events = (await listLogEntries(db, 'harbour', { personId: 'kit-id' }, 10)).map(({ event }) => event);
    expect(events).toEqual(['person-erased', 'roles-set']);
    expect(() => db.delete(logEntries).run()).toThrow('only added to');
    expect(() => db.update(logEntries).set({ personId: null }).run()).toThrow('only added to');
  });

  test('is not erased by another organisation', async () => {
    const before = await everything(db);
    expect(await erase('kit-id', 'college')).toBe(false);
    expect(await everything(db)).toEqual(before);
  });

  test('takes nothing along of anybody else’s', async () => {
    await addPersonOf(db, 'ben', { harbour: 'learner', college: 'learner' });
    await addHeld(db, 'ben', 'harbour', 'here');
    await addHeld(db, 'ben', 'college', 'there');
    await addSignedIn(db, 'ben', 'harbour');
    const ofBen = async () =>
      Object.values(await everything(db))
        .flat()
        .filter((row) => JSON.stringify(row).includes('ben'));
    const before = await ofBen();
    expect(before.length).toBeGreaterThan(10);
    await erase('kit-id');
    expect(await ofBen()).toEqual(before);
  });
});

describe('somebody whom another organisation has too', () => {
  beforeEach(() => addKit({ harbour: 'learner', college: 'instructor' }));

  test('loses what is here and keeps what is there and how they sign in', async () => {
    const before = await everything(db);
    await erase('kit-id');
    const after = await everything(db);
    expect(await listTablesSaying(db, 'kit-id-case-at-harbour')).toEqual([]);
    expect(await listTablesSaying(db, 'kit-id-at-harbour')).toEqual(['invitations']);
    for (const table of ['users', 'accounts', 'sessions', 'verifications']) expect(after[table]).toEqual(before[table]);
    for (const table of ['attempts', 'acts', 'calls', 'class_places', 'members']) {
      const atCollege = before[table]?.filter((row) => JSON.stringify(row).includes('college'));
      expect(atCollege).not.toHaveLength(0);
      expect(after[table]?.filter((row) => JSON.stringify(row).includes('kit'))).toEqual(atCollege);
    }
  });

  test('is forgotten as somebody invited here, not there', async () => {
    await erase('kit-id');
    expect((await findInvitation(db, 'to-kit'))?.email).toBeNull();
    expect((await findInvitation(db, 'to-kit-too'))?.email).toBe(kit.email);
    expect((await findInvitation(db, 'by-kit-id-at-college'))?.inviterId).toBe('kit-id');
  });

  test('is gone once both have erased them', async () => {
    await addPersonOf(db, 'cas', { college: 'administrator' });
    expect(await erase('kit-id', 'college')).toBe(true);
    expect(await erase('kit-id')).toBe(true);
    expect(await findUser(db, 'kit-id')).toBeUndefined();
    expect(await listTablesSaying(db, kit.email)).toEqual([]);
  });
});

test('somebody deactivated elsewhere is still held there', async () => {
  await addKit({ harbour: 'learner' });
  await addPersonOf(db, 'lou', { harbour: 'learner', college: 'learner' }, { deactivatedAt: noon });
  await erase('lou');
  expect(await findUser(db, 'lou')).toBeDefined();
});

test('a keeper goes on looking after the installation, with how they sign in', async () => {
  await addKit({ harbour: 'learner' }, { keeper: true });
  await erase('kit-id');
  expect(await findUser(db, 'kit-id')).toMatchObject({ ...kit, keeper: true });
  expect(await listTablesSaying(db, 'reset-password:kit-id')).toEqual(['verifications']);
  expect(await listTablesSaying(db, 'kit-id-at-harbour')).toEqual(['invitations']);
});
