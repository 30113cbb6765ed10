import { beforeEach, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import {
  addingObservation,
  findObservation,
  listObservations,
  type NewObservation,
  takingBackObservation,
} from '@/db/queries/observations';
import { addingOrganization } from '@/db/queries/organizations';
import {
  addingSignOff,
  findSignOff,
  listSignOffs,
  listStandingSignOffs,
  type NewSignOff,
  takingBackSignOff,
} from '@/db/queries/sign-offs';
import { claimThen, together } from '@/db/together';
import { aRoleProfile, aStanding } from '../support/competency-rows';
import { testDatabase } from '../support/test-database';

const at = (day: number) => new Date(Date.UTC(2026, 0, day));
const [here, there] = ['yard', 'college'];
const taken = { by: 'lead', at: at(9), reason: 'Wrong person' };
let db: Db;

beforeEach(async () => {
  db = testDatabase();
  for (const id of [here, there])
    await together(db, [addingOrganization(db, { id, name: id, slug: id, createdAt: at(1) })]);
});

function aSignOff(id: string, changes: Partial<NewSignOff> = {}): NewSignOff {
  return {
    id,
    organizationId: here,
    learnerId: 'pat',
    profileId: 'helping-hand',
    profile: aRoleProfile(),
    standing: aStanding(),
    comment: 'Sound',
    observationId: null,
    signedBy: 'lead',
    signedAt: at(2),
    endsAt: at(20),
    ...changes,
  };
}

function anObservation(id: string, changes: Partial<NewObservation> = {}): NewObservation {
  const rest = { profileId: null, items: [], unsafe: false, comment: 'Seen', observedBy: 'lead', writtenAt: at(3) };
  return { id, organizationId: here, learnerId: 'pat', observedAt: at(2), ...rest, ...changes };
}

async function sign(...rows: NewSignOff[]): Promise<void> {
  await together(
    db,
    rows.map((row) => addingSignOff(db, row)),
  );
}

function standing(day: number): Promise<string[]> {
  const which = { organizationId: here, profileId: 'helping-hand', at: at(day) };
  return listStandingSignOffs(db, which).then((rows) => rows.map(({ id }) => id));
}

test('a sign-off stands until it ends or is taken back, in its organisation and for its role alone', async () => {
  await sign(
    aSignOff('one'),
    aSignOff('elsewhere', { organizationId: there, learnerId: 'sam' }),
    aSignOff('another role', { profileId: 'other', learnerId: 'kim' }),
  );
  expect([await standing(19), await standing(20)]).toEqual([['one'], []]);
  expect(await claimThen(db, takingBackSignOff(db, 'one', taken), [])).toBe(true);
  expect(await standing(10)).toEqual([]);
});

test('of several that stand the last to end counts', async () => {
  await sign(aSignOff('longer', { endsAt: at(30) }), aSignOff('shorter', { endsAt: at(25) }));
  expect(await standing(10)).toEqual(['longer']);
});

test('what was taken back is taken back once, and stays to be seen with its reason', async () => {
  await sign(aSignOff('one'));
  await claimThen(db, takingBackSignOff(db, 'one', taken), []);
  expect(await claimThen(db, takingBackSignOff(db, 'one', { ...taken, reason: 'Again' }), [])).toBe(false);
  expect(await findSignOff(db, 'one')).toMatchObject({ takenBackBy: 'lead', takenBackReason: 'Wrong person' });
  expect(await listSignOffs(db, { learnerId: 'pat', organizationId: here }, 9)).toHaveLength(1);
  expect(await listSignOffs(db, { learnerId: 'pat', organizationId: there }, 9)).toEqual([]);
});

test('a form that is sent twice writes down one hands-on check, and signs once', async () => {
  for (const _ of [1, 2])
    await together(db, [addingObservation(db, anObservation('seen')), addingSignOff(db, aSignOff('one'))]);
  expect(await listObservations(db, { learnerId: 'pat', organizationId: here }, 9)).toHaveLength(1);
  expect(await listSignOffs(db, { learnerId: 'pat', organizationId: here }, 9)).toHaveLength(1);
});

test('hands-on checks come with the newest first, those taken back too', async () => {
  const rows = [
    anObservation('old'),
    anObservation('new', { observedAt: at(5) }),
    anObservation('theirs', { organizationId: there }),
  ];
  await together(
    db,
    rows.map((row) => addingObservation(db, row)),
  );
  await claimThen(db, takingBackObservation(db, 'new', taken), []);
  const found = await listObservations(db, { learnerId: 'pat', organizationId: here }, 9);
  expect(found.map(({ id, takenBackReason }) => [id, takenBackReason])).toEqual([
    ['new', 'Wrong person'],
    ['old', null],
  ]);
  expect(await findObservation(db, 'theirs')).toMatchObject({ organizationId: there, takenBackAt: null });
});
