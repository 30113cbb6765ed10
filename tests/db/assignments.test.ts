import { eq } from 'drizzle-orm';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import {
  addingAssignedClass,
  addingAssignedPerson,
  findExtraTime,
  findMostExtraTime,
  givingExtraTime,
  listAssigned,
  listAssignedClasses,
} from '@/db/queries/assigned-people';
import {
  addingAssignment,
  archivingAssignment,
  findAssignment,
  listAssignments,
  movingDates,
} from '@/db/queries/assignments';
import { addingClass, addingClassPlace } from '@/db/queries/classes';
import { addingMember } from '@/db/queries/members';
import { addingNudge, countNudgesSince, countUnreadNudges, listUnreadNudges, readingNudge } from '@/db/queries/nudges';
import { addingOrganization } from '@/db/queries/organizations';
import { listTurnLines, movingTurnsEnd } from '@/db/queries/turn-ends';
import { addingUser } from '@/db/queries/users';
import { sittings, turns } from '@/db/schema';
import { claimThen, together } from '@/db/together';
import { aMember, anOrganization, aUser } from '../support/people-rows';
import { addAssignment, addSet, addTurn, aSetBody, someRules } from '../support/teaching-rows';
import { testDatabase } from '../support/test-database';

const day = (of: number, hour = 8) => new Date(Date.UTC(2026, 0, of, hour));
const quiz = { assignmentId: 'quiz', organizationId: 'harbour' };
let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await together(db, [
    addingOrganization(db, anOrganization()),
    addingOrganization(db, anOrganization({ id: 'college', slug: 'college' })),
    addingUser(db, aUser()),
    addingUser(db, aUser({ id: 'ben', name: 'Ben', email: 'ben@harbour.invalid' })),
    addingUser(db, aUser({ id: 'cas', name: 'Cas', email: 'cas@harbour.invalid' })),
    addingMember(db, aMember()),
    addingMember(db, aMember({ id: 'ben-at-harbour', userId: 'ben' })),
    addingMember(db, aMember({ id: 'cas-at-harbour', userId: 'cas', deactivatedAt: day(1) })),
    addingClass(db, { id: 'morning', organizationId: 'harbour', name: 'Morning', createdAt: day(1) }),
    addingClassPlace(db, { classId: 'morning', userId: 'ada', joinedAt: day(1) }),
    addingClassPlace(db, { classId: 'morning', userId: 'cas', joinedAt: day(1) }),
  ]);
  const { versionId } = await addSet(db, { id: 'supply', organizationId: 'harbour', createdBy: 'ira' });
  await addAssignment(db, { id: 'quiz', organizationId: 'harbour', setVersionId: versionId, createdBy: 'ira' });
});

describe('an assignment', () => {
  test('is found with the version that it gives, and not by another organisation', async () => {
    const found = await findAssignment(db, quiz);
    expect(found).toMatchObject({ id: 'quiz', setId: 'supply', version: 1, body: aSetBody() });
    expect(await findAssignment(db, { ...quiz, organizationId: 'college' })).toBeUndefined();
  });

  test('is added once', async () => {
    const row = { ...quiz, id: 'quiz', setVersionId: 'supply-1', title: 'Again', rules: someRules() };
    const again = { ...row, opensAt: day(1), closesAt: day(8), createdBy: 'ira', createdAt: day(1) };
    expect(await claimThen(db, addingAssignment(db, again), [])).toBe(false);
    expect((await findAssignment(db, quiz))?.title).toBe('Supply side');
  });

  test('moves from the dates that were seen, and not from others', async () => {
    const found = await findAssignment(db, quiz);
    if (!found) throw new Error('It is gone');
    const to = { rules: someRules({ closes: '2026-01-09T08:00' }), opensAt: found.opensAt, closesAt: day(9) };
    expect(await claimThen(db, movingDates(db, found, to), [])).toBe(true);
    expect(await claimThen(db, movingDates(db, found, to), [])).toBe(false);
    expect(await findAssignment(db, quiz)).toMatchObject({ closesAt: day(9), rules: to.rules });
  });

  test('is put away once, and taken out once', async () => {
    expect(await claimThen(db, archivingAssignment(db, 'quiz', day(9)), [])).toBe(true);
    expect(await claimThen(db, archivingAssignment(db, 'quiz', day(9)), [])).toBe(false);
    expect(await claimThen(db, archivingAssignment(db, 'quiz', null), [])).toBe(true);
    expect(await claimThen(db, archivingAssignment(db, 'quiz', null), [])).toBe(false);
  });
});

describe('the list of assignments', () => {
  test('counts people, not turns, and keeps to the organisation', async () => {
    const turn = { assignmentId: 'quiz', organizationId: 'harbour' };
    await addTurn(db, { ...turn, id: 'a1', learnerId: 'ada', handedInAt: day(2) });
    await addTurn(db, { ...turn, id: 'a2', learnerId: 'ada', number: 2 });
    await addTurn(db, { ...turn, id: 'b1', learnerId: 'ben' });
    await together(db, [givingExtraTime(db, { assignmentId: 'quiz', userId: 'ben', extraTime: 0.25 })]);
    expect(await listAssignments(db, 'college', 10)).toEqual([]);
    expect(await listAssignments(db, 'harbour', 10)).toMatchObject([
      { id: 'quiz', begun: 2, handedIn: 1, mostExtraTime: 0.25 },
    ]);
  });

  test('has what is put away last', async () => {
    const like = { organizationId: 'harbour', setVersionId: 'supply-1', createdBy: 'ira' };
    await addAssignment(db, { id: 'old', ...like, closesAt: day(20), archivedAt: day(21) });
    await addAssignment(db, { id: 'new', ...like, closesAt: day(15) });
    expect((await listAssignments(db, 'harbour', 10)).map(({ id }) => id)).toEqual(['new', 'quiz', 'old']);
  });
});

describe('whom it is given to', () => {
  test('whoever is in its classes or named, once, and let in', async () => {
    await together(db, [
      addingAssignedClass(db, { assignmentId: 'quiz', classId: 'morning' }),
      addingAssignedPerson(db, { assignmentId: 'quiz', userId: 'ada', named: true }),
      addingAssignedPerson(db, { assignmentId: 'quiz', userId: 'ben', named: true }),
    ]);
    const people = await listAssigned(db, quiz, 10);
    expect(people.map(({ id, named }) => ({ id, named }))).toEqual([
      { id: 'ada', named: true },
      { id: 'ben', named: true },
    ]);
    expect(await listAssignedClasses(db, 'quiz')).toEqual([{ id: 'morning', name: 'Morning' }]);
  });

  test('more time names nobody who was not, and unnames nobody who was', async () => {
    await together(db, [
      addingAssignedPerson(db, { assignmentId: 'quiz', userId: 'ada', named: true }),
      givingExtraTime(db, { assignmentId: 'quiz', userId: 'ada', extraTime: 0.25 }),
      givingExtraTime(db, { assignmentId: 'quiz', userId: 'ben', extraTime: 0.5 }),
    ]);
    expect(await listAssigned(db, quiz, 10)).toEqual([{ id: 'ada', name: 'Ada', named: true, extraTime: 0.25 }]);
    expect(await findExtraTime(db, { assignmentId: 'quiz', userId: 'ben' })).toBe(0.5);
    expect(await findMostExtraTime(db, 'quiz')).toBe(0.5);
    expect(await findMostExtraTime(db, 'other')).toBe(0);
  });
});

describe('the end of a turn', () => {
  const turn = { assignmentId: 'quiz', organizationId: 'harbour', learnerId: 'ada', startedAt: day(2), endsAt: day(4) };

  async function closing(id: string): Promise<(Date | null)[]> {
    const [sitting] = await db.select().from(sittings).where(eq(sittings.id, id));
    const [row] = await db.select().from(turns).where(eq(turns.sittingId, id));
    return [sitting?.closesAt ?? null, row?.endsAt ?? null];
  }

  test.each([
    ['goes on', {}, day(3), day(5)],
    ['is handed in', { handedInAt: day(3) }, day(3), day(4)],
    ['is over', {}, day(4), day(4)],
  ])('of one that %s', async (_, changes, now, expected) => {
    const sitting = { id: 's', learnerId: 'ada', organizationId: 'harbour', key: 'k', mode: 'check' as const };
    await db.insert(sittings).values({ ...sitting, topics: [], createdAt: day(2), closesAt: day(4) });
    await addTurn(db, { id: 't', sittingId: 's', ...turn, ...changes });
    await together(db, movingTurnsEnd(db, { turnId: 't', endsAt: day(5), now }));
    expect(await closing('s')).toEqual([expected, expected]);
    expect((await listTurnLines(db, 'quiz')).map(({ id, endsAt }) => [id, endsAt])).toEqual([['t', expected]]);
  });
});

describe('messages', () => {
  const to = { assignmentId: 'quiz', userId: 'ada' };

  test('are read once, by whom they are to', async () => {
    const nudge = { id: 'n', ...to, text: 'Mind the hose', sentBy: 'ira', sentAt: day(2) };
    await together(db, [addingNudge(db, nudge), addingNudge(db, { ...nudge, text: 'Again' })]);
    expect(await listUnreadNudges(db, to)).toEqual([{ id: 'n', text: 'Mind the hose', sentAt: day(2) }]);
    expect(await countUnreadNudges(db, 'quiz')).toEqual(new Map([['ada', 1]]));
    expect(await claimThen(db, readingNudge(db, { id: 'n', userId: 'ben', at: day(3) }), [])).toBe(false);
    expect(await claimThen(db, readingNudge(db, { id: 'n', userId: 'ada', at: day(3) }), [])).toBe(true);
    expect(await claimThen(db, readingNudge(db, { id: 'n', userId: 'ada', at: day(4) }), [])).toBe(false);
    expect(await listUnreadNudges(db, to)).toEqual([]);
    expect(await countNudgesSince(db, { ...to, since: day(1) })).toBe(1);
    expect(await countNudgesSince(db, { ...to, since: day(2) })).toBe(0);
  });
});
