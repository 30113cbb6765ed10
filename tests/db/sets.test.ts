import { beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import {
  addingFirstVersion,
  addingSet,
  archivingSet,
  findNewestVersion,
  findSet,
  findSetsOrganization,
  findVersion,
  freezingVersion,
  listSets,
  listSetVersions,
  restoringSet,
  type SetReader,
  savingVersion,
  sharingSet,
  unsharingSet,
} from '@/db/queries/sets';
import { claimThen, type Statement, together } from '@/db/together';
import { addPersonOf, makeShopAndCollege, noon } from '../support/shop-rows';
import { aSetBody } from '../support/teaching-rows';
import { testDatabase } from '../support/test-database';

let db: Db;
const hours = (n: number) => new Date(noon.getTime() + n * 3_600_000);
const ira: SetReader = { personId: 'ira', seesAll: false };
const rho: SetReader = { personId: 'rho', seesAll: false };
const administrator: SetReader = { personId: 'ada', seesAll: true };

beforeEach(async () => {
  db = testDatabase();
  await makeShopAndCollege(db);
  await addPersonOf(db, 'ira', { harbour: 'instructor' });
  await addPersonOf(db, 'rho', { harbour: 'instructor' });
  await make('supply', 1);
});

async function make(id: string, hour: number): Promise<void> {
  const made = { id, organizationId: 'harbour', createdBy: 'ira', createdAt: hours(hour) };
  await claimThen(db, addingSet(db, made), [
    addingFirstVersion(db, { id: `${id}-1`, setId: id, body: body(`${id} 1`), writtenBy: 'ira', at: hours(hour) }),
  ]);
}

const body = (title: string) => aSetBody({ title });

function save(basedOn: string, id: string, title: string, writtenBy = 'ira'): number {
  return savingVersion(db, basedOn, { id, setId: 'supply', body: body(title), writtenBy, at: hours(5) }).run().changes;
}

const did = (statement: Statement): number => statement.run().changes;
const act = (reader: SetReader, setId = 'supply') => ({ setId, reader, at: hours(6) });
const titles = async (reader: SetReader, archived = false, limit = 10) =>
  (await listSets(db, 'harbour', reader, { archived, limit })).map(({ newest }) => newest.body.title);

test('a set is made once, however often it is sent', async () => {
  await make('supply', 2);
  expect(await listSetVersions(db, 'supply')).toHaveLength(1);
  expect((await findSet(db, 'harbour', 'supply'))?.createdAt).toEqual(hours(1));
});

describe('versions', () => {
  test('one that nobody was given is changed in its place', async () => {
    expect(save('supply-1', 'supply-2', 'Changed')).toBe(1);
    expect(await listSetVersions(db, 'supply')).toMatchObject([{ id: 'supply-1', number: 1, body: body('Changed') }]);
  });

  test('one that was assigned stays as it was for good, and saving makes the next', async () => {
    await together(db, [freezingVersion(db, 'supply-1', hours(3))]);
    expect(save('supply-1', 'supply-2', 'Changed', 'rho')).toBe(1);
    expect(await findVersion(db, 'supply-1')).toMatchObject({
      organizationId: 'harbour',
      body: body('supply 1'),
      writtenBy: 'ira',
      frozenAt: hours(3),
    });
    expect(await findNewestVersion(db, 'supply')).toEqual({
      id: 'supply-2',
      setId: 'supply',
      number: 2,
      body: body('Changed'),
      writtenBy: 'rho',
      changedAt: hours(5),
      frozenAt: null,
    });
  });

  test('nothing is saved over a version that somebody else has moved on from', async () => {
    did(freezingVersion(db, 'supply-1', hours(3)));
    save('supply-1', 'supply-2', 'Mine');
    expect(save('supply-1', 'supply-3', 'Theirs')).toBe(0);
    expect((await findNewestVersion(db, 'supply'))?.body.title).toBe('Mine');
  });

  test('a version is not saved into another set', async () => {
    await make('other', 2);
    expect(save('other-1', 'supply-2', 'Changed')).toBe(0);
    expect((await findNewestVersion(db, 'other'))?.body.title).toBe('other 1');
  });

  test('what is assigned again keeps the moment at which it first was', async () => {
    did(freezingVersion(db, 'supply-1', hours(3)));
    expect(did(freezingVersion(db, 'supply-1', hours(4)))).toBe(0);
    expect((await findVersion(db, 'supply-1'))?.frozenAt).toEqual(hours(3));
  });
});

describe('who sees a set', () => {
  test('unshared: who made it and administrators, and nobody else', async () => {
    expect(await findSetsOrganization(db, 'supply', ira)).toBe('harbour');
    expect(await findSetsOrganization(db, 'supply', administrator)).toBe('harbour');
    expect(await findSetsOrganization(db, 'supply', rho)).toBeUndefined();
    expect(await titles(rho)).toEqual([]);
    expect(await titles(administrator)).toEqual(['supply 1']);
  });

  test('shared: everybody of the organisation, until it is taken back by who made it', async () => {
    expect(did(sharingSet(db, act(rho)))).toBe(0);
    expect(did(sharingSet(db, act(ira)))).toBe(1);
    expect(await findSetsOrganization(db, 'supply', rho)).toBe('harbour');
    expect(await titles(rho)).toEqual(['supply 1']);
    expect(did(unsharingSet(db, act(rho)))).toBe(0);
    expect(did(unsharingSet(db, act(ira)))).toBe(1);
    expect(await findSetsOrganization(db, 'supply', rho)).toBeUndefined();
  });

  test('no other organisation lists or finds it', async () => {
    expect(await listSets(db, 'quay', administrator, { limit: 10 })).toEqual([]);
    expect(await findSet(db, 'quay', 'supply')).toBeUndefined();
  });
});

describe('a set in the archive', () => {
  test('stands apart and is not changed until it is restored', async () => {
    expect(did(archivingSet(db, act(rho)))).toBe(0);
    expect(did(archivingSet(db, act(ira)))).toBe(1);
    expect(await titles(ira)).toEqual([]);
    expect(await titles(ira, true)).toEqual(['supply 1']);
    expect(save('supply-1', 'supply-2', 'Changed')).toBe(0);
    expect(did(restoringSet(db, act(ira)))).toBe(1);
    expect(save('supply-1', 'supply-2', 'Changed')).toBe(1);
  });
});

test('the list says the newest version of each, those changed last first, up to its limit', async () => {
  await make('other', 2);
  did(freezingVersion(db, 'supply-1', hours(3)));
  save('supply-1', 'supply-2', 'Changed');
  expect(await titles(ira)).toEqual(['Changed', 'other 1']);
  expect(await titles(ira, false, 1)).toEqual(['Changed']);
  expect(await listSets(db, 'harbour', ira, { limit: 1 })).toMatchObject([{ id: 'supply', maker: expect.any(String) }]);
});
