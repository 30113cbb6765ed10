import { beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import {
  acceptingInvitation,
  addingInvitation,
  findInvitation,
  findOpenInvitation,
  withdrawingInvitation,
  withdrawingInvitations,
} from '@/db/queries/invitations';
import { addingUser, findUser } from '@/db/queries/users';
import { claimThen, together } from '@/db/together';
import { aUser } from '../support/people-rows';
import { addPersonOf, anInvitation, dayAfter, makeShopAndCollege, noon } from '../support/shop-rows';
import { testDatabase } from '../support/test-database';

const TOKEN_HASH = 'hash of invitation-a';
const before = new Date(dayAfter.getTime() - 1);
let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await makeShopAndCollege(db);
  await addPersonOf(db, 'ada', { harbour: 'administrator' });
  const sent = { email: 'kit@harbour.example', role: 'learner,instructor', classId: 'harbour-class' };
  await together(db, [addingInvitation(db, anInvitation(sent))]);
});

const find = (now = noon) => findOpenInvitation(db, TOKEN_HASH, now);

describe('an invitation', () => {
  test('says to whoever has its link where it lets them in, and as what', async () => {
    expect(await find()).toEqual({
      id: 'invitation-a',
      organizationId: 'harbour',
      organizationName: 'Harbour Diesel',
      slug: 'harbour',
      role: 'learner,instructor',
      classId: 'harbour-class',
      email: 'kit@harbour.example',
    });
  });

  test('is not opened by its id, nor by what another carries', async () => {
    expect(await findOpenInvitation(db, 'invitation-a', noon)).toBeUndefined();
    expect(await findOpenInvitation(db, 'hash of invitation-b', noon)).toBeUndefined();
    expect(await findOpenInvitation(db, '', noon)).toBeUndefined();
  });

  test('lets in until it ends', async () => {
    expect(await find(before)).toBeDefined();
    expect(await find(dayAfter)).toBeUndefined();
    expect(acceptingInvitation(db, 'invitation-a', dayAfter).run().changes).toBe(0);
    expect(acceptingInvitation(db, 'invitation-a', before).run().changes).toBe(1);
  });

  test('lets one in, and whoever comes second is not made', async () => {
    const letIn = (id: string) =>
      claimThen(db, acceptingInvitation(db, 'invitation-a', noon), [
        addingUser(db, aUser({ id, email: `${id}@harbour.example` })),
      ]);
    expect(await Promise.all([letIn('kit'), letIn('eve')])).toEqual([true, false]);
    expect(await findUser(db, 'kit')).toBeDefined();
    expect(await findUser(db, 'eve')).toBeUndefined();
    expect(await find()).toBeUndefined();
  });

  test('forgets where it was sent once it is used', async () => {
    await together(db, [acceptingInvitation(db, 'invitation-a', noon)]);
    expect(await findInvitation(db, 'invitation-a')).toMatchObject({ status: 'accepted', email: null });
  });
});

describe('taken back', () => {
  const withdrawing = (organizationId: string) =>
    withdrawingInvitation(db, { organizationId, invitationId: 'invitation-a' });

  test('it lets nobody in and does not tell where it was sent', async () => {
    expect(withdrawing('harbour').run().changes).toBe(1);
    expect(await find()).toBeUndefined();
    expect(acceptingInvitation(db, 'invitation-a', noon).run().changes).toBe(0);
    expect(await findInvitation(db, 'invitation-a')).toMatchObject({ status: 'withdrawn', email: null });
  });

  test('by another organisation it stays as it was', async () => {
    expect(withdrawing('college').run().changes).toBe(0);
    expect(await find()).toMatchObject({ email: 'kit@harbour.example' });
  });

  test('after it was used it stays used', async () => {
    await together(db, [acceptingInvitation(db, 'invitation-a', noon)]);
    expect(withdrawing('harbour').run().changes).toBe(0);
    expect((await findInvitation(db, 'invitation-a'))?.status).toBe('accepted');
  });

  test('with all others of its organisation, those of another and those used stay as they were', async () => {
    await together(db, [
      addingInvitation(db, anInvitation({ id: 'used', status: 'accepted' })),
      addingInvitation(db, anInvitation({ id: 'further' })),
      addingInvitation(db, anInvitation({ id: 'elsewhere', organizationId: 'college' })),
      withdrawingInvitations(db, 'harbour'),
    ]);
    const status = async (id: string) => (await findInvitation(db, id))?.status;
    expect(await Promise.all(['invitation-a', 'further', 'used', 'elsewhere'].map(status))).toEqual([
      'withdrawn',
      'withdrawn',
      'accepted',
      'pending',
    ]);
  });
});
