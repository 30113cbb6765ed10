import { beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { addingOrganization } from '@/db/queries/organizations';
import { addingPanel, adoptingCut, findPanel, listRatings, movingPanelOn, rating } from '@/db/queries/panels';
import { claimThen, together } from '@/db/together';
import { testDatabase } from '../support/test-database';

const at = new Date(Date.UTC(2026, 0, 1));
let db: Db;

beforeEach(async () => {
  db = testDatabase();
  for (const id of ['harbour', 'college'])
    await together(db, [addingOrganization(db, { id, name: id, slug: id, createdAt: at })]);
  const panel = {
    ...{ id: 'spring', organizationId: 'harbour', schemeId: 'low-pressure-diagnosis', title: 'Spring', tasks: [] },
    ...{ state: 'first-round' as const, createdBy: 'somebody', createdAt: at },
  };
  const { claim, others } = addingPanel(db, panel, ['ada', 'ben']);
  await claimThen(db, claim, others);
});

function rate(judgeId: string, round: number, expected = 0.5) {
  return claimThen(db, rating(db, { panelId: 'spring', judgeId, round, task: 1, expected, ratedAt: at }), []);
}

describe('ratings of a panel', () => {
  test('are taken from its judges alone, in the round that goes on', async () => {
    expect(await rate('ada', 1)).toBe(true);
    expect(await rate('cleo', 1)).toBe(false);
    expect(await rate('ada', 2)).toBe(false);
    await claimThen(db, movingPanelOn(db, { id: 'spring', from: 'first-round', to: 'second-round', at }), []);
    expect(await rate('ada', 1)).toBe(false);
    expect(await rate('ada', 2)).toBe(true);
  });

  test('replace the earlier of the same round, and leave the first round as it was', async () => {
    await rate('ada', 1, 0.4);
    await rate('ada', 1, 0.6);
    expect((await listRatings(db, 'spring')).map(({ expected }) => expected)).toEqual([0.6]);
  });

  test('move on once, and the line is taken over once, from a closed panel', async () => {
    const on = (from: 'first-round' | 'second-round', to: 'second-round' | 'closed') =>
      claimThen(db, movingPanelOn(db, { id: 'spring', from, to, at }), []);
    expect(await claimThen(db, adoptingCut(db, { id: 'spring', version: 2 }), [])).toBe(false);
    expect(await on('first-round', 'second-round')).toBe(true);
    expect(await on('first-round', 'second-round')).toBe(false);
    expect(await on('second-round', 'closed')).toBe(true);
    expect(await claimThen(db, adoptingCut(db, { id: 'spring', version: 2 }), [])).toBe(true);
    expect(await claimThen(db, adoptingCut(db, { id: 'spring', version: 3 }), [])).toBe(false);
  });

  test('belong to the organisation of the panel', async () => {
    expect(await findPanel(db, 'harbour', 'spring')).toBeDefined();
    expect(await findPanel(db, 'college', 'spring')).toBeUndefined();
  });
});
