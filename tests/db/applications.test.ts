import { beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import {
  addingApplication,
  endingApplication,
  findApplication,
  findApplicationWork,
  listApplicationsOf,
} from '@/db/queries/applications';
import { addingOrganization } from '@/db/queries/organizations';
import { claimThen, together } from '@/db/together';
import { aScheme } from '../support/competency-rows';
import { testDatabase } from '../support/test-database';

const appliedAt = new Date(Date.UTC(2026, 0, 1));
const scheme = aScheme({ version: 3 });
let db: Db;

beforeEach(async () => {
  db = testDatabase();
  for (const id of ['harbour', 'college'])
    await together(db, [addingOrganization(db, { id, name: id, slug: id, createdAt: appliedAt })]);
});

function apply(id: string, changes: { learnerId?: string; schemeId?: string } = {}) {
  const row = { id, organizationId: 'harbour', learnerId: 'ada', schemeId: scheme.id, scheme, appliedAt, ...changes };
  return claimThen(db, addingApplication(db, row), []);
}

function end(id: string, state: 'granted' | 'refused' | 'withdrawn') {
  const by = { decidedBy: 'cleo', decidedAt: appliedAt, reason: 'Seen' };
  return claimThen(db, endingApplication(db, { id, state, ...by }), []);
}

describe('an application', () => {
  test('keeps the rules that it was made under', async () => {
    await apply('first');
    expect(await findApplication(db, 'harbour', 'first')).toMatchObject({ state: 'open', scheme, demo: false });
    expect(await findApplication(db, 'college', 'first')).toBeUndefined();
    expect(await findApplicationWork(db, 'first')).toEqual({ learnerId: 'ada', organizationId: 'harbour' });
  });

  test('is one at a time, a person and certificate', async () => {
    expect(await apply('first')).toBe(true);
    expect(await apply('second')).toBe(false);
    expect(await apply('other', { schemeId: 'another' })).toBe(true);
    expect(await apply('ben', { learnerId: 'ben' })).toBe(true);
    await end('first', 'withdrawn');
    expect(await apply('second')).toBe(true);
  });

  test('is decided once', async () => {
    await apply('first');
    expect(await end('first', 'granted')).toBe(true);
    expect(await end('first', 'refused')).toBe(false);
    const of = { learnerId: 'ada', organizationId: 'harbour', schemeId: scheme.id };
    expect((await listApplicationsOf(db, of)).map(({ state, reason }) => [state, reason])).toEqual([
      ['granted', 'Seen'],
    ]);
  });
});
