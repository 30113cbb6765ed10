import { sql } from 'drizzle-orm';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { ofLearnerIn, recordAttempt } from '@/db/queries/attempts';
import { addingClass, addingClassPlace, changingClass, isOpenClassOf } from '@/db/queries/classes';
import { addingInvitation, listOpenInvitations } from '@/db/queries/invitations';
import { addingLogEntry } from '@/db/queries/log-entries';
import {
  countHeld,
  findLastSignIn,
  listOthers,
  listPeople,
  listPlaces,
  ofSignInsTo,
  type PeopleFilter,
  removingResetLinks,
} from '@/db/queries/people';
import { listSessions, removingSessions } from '@/db/queries/sessions';
import { listTaken } from '@/db/queries/users';
import { attempts, logEntries, verifications } from '@/db/schema';
import { together } from '@/db/together';
import type { LogEvent } from '@/lib/accounts/log-events';
import { anAttempt } from '../support/attempt-rows';
import {
  addHeld,
  addPersonOf,
  addSignedIn,
  anInvitation,
  dayAfter,
  makeShopAndCollege,
  noon,
} from '../support/shop-rows';
import { testDatabase } from '../support/test-database';

const later = new Date(dayAfter.getTime() + 1);

let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await makeShopAndCollege(db);
  await addPersonOf(db, 'ada', { harbour: 'administrator' }, { name: 'Ada Moe', email: 'ada@harbour.example' });
  await addPersonOf(db, 'ben', { harbour: 'learner' }, { name: 'Ben 100% Oak', email: 'ben_oak@harbour.invalid' });
  await addPersonOf(db, 'bo', { harbour: 'learner', college: 'instructor' }, { name: 'Bo \\ Ash' });
  await addPersonOf(db, 'cas', { college: 'learner' }, { name: 'Cas Elm', email: 'cas@hill-college.invalid' });
});

const idsOf = async (filter: PeopleFilter = {}, organizationId = 'harbour', limit = 10) =>
  (await listPeople(db, organizationId, filter, limit)).map(({ id }) => id);

describe('the list of people', () => {
  test('holds those of the organisation alone, by name, as what they are there', async () => {
    expect(await idsOf()).toEqual(['ada', 'ben', 'bo']);
    const college = await listPeople(db, 'college', {}, 10);
    expect(college.map(({ id, role }) => ({ id, role }))).toEqual([
      { id: 'bo', role: 'instructor' },
      { id: 'cas', role: 'learner' },
    ]);
    expect(await idsOf({}, 'yard')).toEqual([]);
  });

  test('has deactivated people last, and stops where it is told', async () => {
    await addPersonOf(db, 'abe', { harbour: 'learner' }, { deactivatedAt: noon });
    expect(await idsOf()).toEqual(['ada', 'ben', 'bo', 'abe']);
    expect(await idsOf({}, 'harbour', 2)).toEqual(['ada', 'ben']);
  });

  test.each([
    ['oak', ['ben']],
    ['OAK', ['ben']],
    ['harbour.example', ['ada']],
    ['a', ['ada', 'ben', 'bo']],
    ['elm', []],
    ['cas@', []],
    ['%', ['ben']],
    ['0% o', ['ben']],
    ['%a%', []],
    ['_', ['ben']],
    ['n_o', ['ben']],
    ['a_a', []],
    ['\\', ['bo']],
    ['\\%', []],
    ["' or 1=1 --", []],
  ])('is searched for %j as it stands', async (search, found) => {
    expect(await idsOf({ search })).toEqual(found);
  });

  test('is searched within the organisation for whoever is something there', async () => {
    await addPersonOf(db, 'dot', { harbour: 'learner,instructor,shop-lead' });
    expect(await idsOf({ role: 'learner' })).toEqual(['ben', 'bo', 'dot']);
    expect(await idsOf({ role: 'instructor' })).toEqual(['dot']);
    expect(await idsOf({ role: 'shop-lead' })).toEqual(['dot']);
    expect(await idsOf({ role: 'administrator' })).toEqual(['ada']);
    expect(await idsOf({ role: 'learner', search: 'ash' })).toEqual(['bo']);
    expect(await idsOf({ role: 'administrator', search: 'ash' })).toEqual([]);
  });

  test('says when somebody last started a case here, wherever else they started one later', async () => {
    const started = (id: string, createdAt: Date, organizationId = 'harbour', learnerId = 'bo') =>
      recordAttempt(db, anAttempt({ id, key: id, learnerId, organizationId, createdAt }));
    const [first, second, third] = [1, 2, 3].map((day) => new Date(Date.UTC(2026, 2, day))) as [Date, Date, Date];
    await started('a', second);
    await started('b', first);
    await started('c', third, 'college');
    await started('d', third, 'harbour', 'ada');
    const people = await listPeople(db, 'harbour', {}, 10);
    expect(people.map(({ id, lastStartedAt }) => [id, lastStartedAt])).toEqual([
      ['ada', third],
      ['ben', null],
      ['bo', second],
    ]);
  });

  test('counts the cases that each of them called here', async () => {
    await addHeld(db, 'bo', 'harbour', 'here');
    await addHeld(db, 'bo', 'college', 'there');
    await recordAttempt(db, anAttempt({ id: 'open', key: 'open', learnerId: 'ben', organizationId: 'harbour' }));
    const people = await listPeople(db, 'harbour', {}, 10);
    expect(people.map(({ id, finished }) => [id, finished])).toEqual([
      ['ada', 0],
      ['ben', 0],
      ['bo', 1],
    ]);
  });

  test('looks cases up by whose they are, not among all of the organisation’s', () => {
    const cases = db.select().from(attempts).where(ofLearnerIn('harbour', 'bo')).getSQL();
    const plan = db.all<{ detail: string }>(sql`explain query plan ${cases}`);
    expect(plan.map(({ detail }) => detail)).toEqual([expect.stringContaining('(learner_id=? AND organization_id=?)')]);
  });

  test('without one of them is the others', async () => {
    const others = (search?: string) => listOthers(db, { organizationId: 'harbour', userId: 'ben' }, { search }, 10);
    expect((await others()).map(({ id }) => id)).toEqual(['ada', 'bo']);
    expect((await others('o')).map(({ id }) => id)).toEqual(['ada', 'bo']);
    expect((await others('ash')).map(({ id }) => id)).toEqual(['bo']);
  });
});

describe('places in classes', () => {
  test('are those in the organisation’s classes, of the people who are asked for', async () => {
    const places = [
      ['harbour-class', 'ben'],
      ['harbour-class', 'bo'],
      ['college-class', 'bo'],
      ['a-class', 'bo'],
    ] as const;
    await together(db, [
      addingClass(db, { id: 'a-class', organizationId: 'harbour', name: 'Afternoons', createdAt: noon }),
      ...places.map(([classId, userId]) => addingClassPlace(db, { classId, userId, joinedAt: noon })),
    ]);
    expect(await listPlaces(db, 'harbour', ['bo'])).toEqual([
      { userId: 'bo', classId: 'a-class', name: 'Afternoons' },
      { userId: 'bo', classId: 'harbour-class', name: 'Mornings' },
    ]);
    expect(await listPlaces(db, 'college', ['ben', 'bo'])).toEqual([
      { userId: 'bo', classId: 'college-class', name: 'Evenings' },
    ]);
    expect(await listPlaces(db, 'harbour', [])).toEqual([]);
  });
});

describe('a class to put somebody in', () => {
  test('is one of the organisation’s that goes on', async () => {
    expect(await isOpenClassOf(db, 'harbour', 'harbour-class')).toBe(true);
    expect(await isOpenClassOf(db, 'harbour', 'college-class')).toBe(false);
    expect(await isOpenClassOf(db, 'harbour', 'no-class')).toBe(false);
    await together(db, [changingClass(db, 'harbour-class', { archivedAt: noon })]);
    expect(await isOpenClassOf(db, 'harbour', 'harbour-class')).toBe(false);
  });
});

describe('what is held of somebody', () => {
  test('is counted for the organisation alone', async () => {
    await addHeld(db, 'bo', 'harbour', 'here');
    await addHeld(db, 'bo', 'college', 'there');
    for (const id of ['open-1', 'open-2'])
      await recordAttempt(db, anAttempt({ id, key: id, learnerId: 'bo', organizationId: 'harbour' }));
    const held = (organizationId: string, userId: string) => countHeld(db, { organizationId, userId });
    expect(await held('harbour', 'bo')).toEqual({ attempts: 3, finished: 1, sittings: 1, classes: 1 });
    expect(await held('college', 'bo')).toEqual({ attempts: 1, finished: 1, sittings: 1, classes: 1 });
    expect(await held('college', 'ada')).toEqual({ attempts: 0, finished: 0, sittings: 0, classes: 0 });
  });
});

describe('open invitations', () => {
  const linesOf = async (organizationId = 'harbour', now = noon, limit = 10) =>
    (await listOpenInvitations(db, organizationId, now, limit)).map(({ id }) => id);

  beforeEach(async () => {
    const later = new Date(noon.getTime() + 1000);
    const made = [
      anInvitation({ email: 'kit@harbour.example', classId: 'harbour-class' }),
      anInvitation({ id: 'newer', createdAt: later, role: 'instructor' }),
      anInvitation({ id: 'used', status: 'accepted' }),
      anInvitation({ id: 'taken-back', status: 'withdrawn' }),
      anInvitation({ id: 'ended', expiresAt: noon }),
      anInvitation({ id: 'elsewhere', organizationId: 'college' }),
    ];
    await together(
      db,
      made.map((one) => addingInvitation(db, one)),
    );
  });

  test('are those of the organisation that still let somebody in, the newest first', async () => {
    expect(await linesOf()).toEqual(['newer', 'invitation-a']);
    expect(await linesOf('college')).toEqual(['elsewhere']);
    expect(await linesOf('harbour', dayAfter)).toEqual([]);
    expect(await linesOf('harbour', noon, 1)).toEqual(['newer']);
  });

  test('say what they let in to, and not what their links carry', async () => {
    const [newer, older] = await listOpenInvitations(db, 'harbour', noon, 10);
    expect(newer).toEqual({ id: 'newer', role: 'instructor', email: null, className: null, expiresAt: dayAfter });
    expect(older).toMatchObject({ email: 'kit@harbour.example', className: 'Mornings' });
    expect(JSON.stringify([newer, older])).not.toContain('hash of');
  });
});

test('names to sign in with are taken across the whole installation', async () => {
  const asked = ['ada@harbour.example', 'cas@hill-college.invalid', 'nobody@harbour.invalid', 'ADA@HARBOUR.EXAMPLE'];
  expect((await listTaken(db, asked)).sort()).toEqual(['ada@harbour.example', 'cas@hill-college.invalid']);
  expect(await listTaken(db, [])).toEqual([]);
});

describe('a last sign-in', () => {
  const signedIn = (at: Date, organizationId = 'harbour', event: LogEvent = 'signed-in') =>
    addingLogEntry(db, { at, organizationId, actorId: 'bo', event, personId: 'bo' });
  const lastOf = (userId: string) => findLastSignIn(db, { organizationId: 'harbour', userId });

  test('is the latest that the organisation has seen, whatever was written later', async () => {
    await together(db, [signedIn(dayAfter), signedIn(noon), signedIn(later, 'harbour', 'signed-out')]);
    expect(await lastOf('bo')).toEqual(dayAfter);
    expect(await lastOf('ben')).toBeNull();
  });

  test('stays known once every session has ended', async () => {
    await addSignedIn(db, 'bo', 'harbour');
    await together(db, [signedIn(noon)]);
    await together(db, [removingSessions(db, 'bo')]);
    expect(await lastOf('bo')).toEqual(noon);
  });

  test('is not told by what another organisation saw', async () => {
    await together(db, [signedIn(noon), signedIn(dayAfter, 'college')]);
    expect(await lastOf('bo')).toEqual(noon);
  });

  test('is looked up by whose it is, not in all of the organisation’s log', () => {
    const entries = db.select().from(logEntries).where(ofSignInsTo('harbour', 'bo')).getSQL();
    const plan = db.all<{ detail: string }>(sql`explain query plan ${entries}`);
    expect(plan.map(({ detail }) => detail)).toEqual([expect.stringContaining('(person_id=?)')]);
  });
});

describe('where somebody is signed in', () => {
  const sessionsOf = async (userId: string) => (await listSessions(db, userId, noon, 10)).length;

  beforeEach(async () => {
    await addSignedIn(db, 'ben', 'harbour');
    await addSignedIn(db, 'bo', 'harbour');
  });

  test('is ended everywhere at once, and nobody else’s', async () => {
    await together(db, [removingSessions(db, 'ben')]);
    expect(await sessionsOf('ben')).toBe(0);
    expect(await sessionsOf('bo')).toBe(1);
  });

  test('may have open links to a new password, which are closed for one person alone', async () => {
    await together(db, [removingResetLinks(db, 'ben')]);
    expect((await db.select().from(verifications)).map(({ value }) => value)).toEqual(['bo']);
    expect(await sessionsOf('ben')).toBe(1);
  });
});
