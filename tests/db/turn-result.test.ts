import { eq } from 'drizzle-orm';
import { beforeEach, describe, expect, test } from 'vitest';
import { turnResult } from '@/app/_server/gradebook/turn-result';
import type { Db } from '@/db/client';
import { addingManualMark } from '@/db/queries/manual-marks';
import { givingPoints } from '@/db/queries/overrides';
import { addingRegrade, undoingRegrade } from '@/db/queries/regrades';
import { keepingResult, listUnsettled } from '@/db/queries/turn-results';
import { assignments, calls, overrides, turnResults, turns } from '@/db/schema';
import { claimThen, together } from '@/db/together';
import type { Change } from '@/lib/regrading/change';
import { aGrade } from '../support/attempt-rows';
import { addHeld, addPersonOf, idOfWhatStays, makeShopAndCollege } from '../support/shop-rows';
import { someRules } from '../support/teaching-rows';
import { testDatabase } from '../support/test-database';

const turnId = 'turn-of-kit-at-harbour';
const assignmentId = `assignment-${idOfWhatStays('kit', 'harbour')}`;
const attemptId = 'kit-case-at-harbour';
const sittingId = 'sitting-of-kit-at-harbour';
const closes = new Date(Date.UTC(2026, 0, 8, 8));
/** 71 points in all. */
const parts = [
  { part: 'verdicts', points: 20, outOf: 25 },
  { part: 'reasons', points: 20, outOf: 25 },
  { part: 'call', points: 11, outOf: 25 },
  { part: 'route', points: 10, outOf: 15 },
  { part: 'practice', points: 10, outOf: 10 },
] as const;
let db: Db;

/** A case that was called for 71 points, and a question that earned all: no override, handed in when it closed. */
beforeEach(async () => {
  db = testDatabase();
  await makeShopAndCollege(db);
  await addPersonOf(db, 'kit', { harbour: 'learner' });
  await addHeld(db, 'kit', 'harbour');
  await db.delete(overrides);
  await db.update(calls).set({ grade: { ...aGrade, parts } });
  await db.update(turns).set({ handedInAt: closes }).where(eq(turns.id, turnId));
});

const total = async (changes?: readonly Change[]) => (await turnResult(db, turnId, changes))?.total;
const given = { reason: 'Said it well', givenBy: 'ada', givenAt: closes };

test('a turn comes to what its tasks earned, the case five times as much as the question', async () => {
  expect(await total()).toBe(75.8); // (5 × 71 + 1 × 100) / 6
  const result = await turnResult(db, turnId);
  expect(result?.tasks.map(({ kind, share, computed }) => [kind, share, computed])).toEqual([
    ['case', 0.71, 0.71],
    ['question', 1, 1],
  ]);
  expect(await turnResult(db, 'no-such')).toBeUndefined();
});

test('a part that a person gave points for counts with those, until they are taken back', async () => {
  await together(db, givingPoints(db, { ...given, id: 'one', attemptId, part: 'call', points: 25 }));
  expect((await turnResult(db, turnId))?.tasks[0]).toMatchObject({ share: 0.85, computed: 0.71 });
  await together(db, givingPoints(db, { ...given, id: 'two', attemptId, part: 'call', points: null }));
  expect(await total()).toBe(75.8);
});

test('a question counts with what a person gave last', async () => {
  const mark = { sittingId, place: 1, comment: '', markedBy: 'ada', markedAt: closes };
  await together(db, [addingManualMark(db, { ...mark, seq: 2, score: 0 })]);
  expect(await total()).toBe(59.2); // 5 × 71 / 6
  await together(db, givingPoints(db, { ...given, id: 'one', sittingId, place: 1, points: 1 }));
  expect(await total()).toBe(75.8);
});

describe('a change of marks', () => {
  const withdrawn: Change = { kind: 'withdraw', place: 1 };

  test('shows what it would do before it is made, and counts once it is, until it is undone', async () => {
    expect(await total([withdrawn])).toBe(100);
    expect(await total()).toBe(75.8);
    const made = { id: 'change', assignmentId, change: withdrawn, reason: 'Unclear', madeBy: 'ada', madeAt: closes };
    const { claim, others } = addingRegrade(db, made);
    expect(await claimThen(db, claim, others)).toBe(true);
    expect(await total()).toBe(100);
    const undone = undoingRegrade(db, { id: 'change', assignmentId, undoneBy: 'ada', undoneAt: closes });
    expect(await claimThen(db, undone.claim, undone.others)).toBe(true);
    expect(await claimThen(db, undone.claim, undone.others)).toBe(false);
    expect(await total()).toBe(75.8);
  });

  test('by other weights moves the case alone', async () => {
    const weights = { verdicts: 100, reasons: 0, call: 0, route: 0, practice: 0 };
    const result = await turnResult(db, turnId, [{ kind: 'weights', weights }]);
    expect(result?.tasks[0]?.share).toBe(0.8); // 20 of 25
    expect(result?.tasks[1]?.share).toBe(1);
  });
});

test('a turn handed in late loses what the rule takes', async () => {
  const late = { hours: 48, cost: 20 };
  await db.update(assignments).set({ rules: someRules({ late }) });
  expect(await total()).toBe(75.8);
  const after = new Date(closes.getTime() + 1);
  await db.update(turns).set({ handedInAt: after }).where(eq(turns.id, turnId));
  expect(await total()).toBe(60.7); // 75.83 × 0.8
});

test('what a turn came to is kept once, and forgotten with a mark that changes', async () => {
  await db.delete(turnResults);
  expect((await listUnsettled(db, 'harbour', 10)).map(({ id }) => id)).toEqual([turnId]);
  const result = await turnResult(db, turnId);
  if (!result) throw new Error('The turn came to nothing');
  await together(db, [keepingResult(db, result), keepingResult(db, { ...result, total: 1 })]);
  expect(await listUnsettled(db, 'harbour', 10)).toEqual([]);
  expect((await db.select().from(turnResults)).map((row) => row.total)).toEqual([75.8]);
  await together(db, givingPoints(db, { ...given, id: 'one', attemptId, part: 'route', points: 1 }));
  expect((await listUnsettled(db, 'harbour', 10)).map(({ id }) => id)).toEqual([turnId]);
});
