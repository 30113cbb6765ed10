import { beforeEach, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import {
  addingCertificate,
  addingCertificateEvent,
  findToIssue,
  listCertificateEvents,
  listCertificates,
  listStatusEvents,
  listTakenPlaces,
  listToIssue,
} from '@/db/queries/certificates';
import { addingIssuerKey, compromisingKey, listIssuerKeys, retiringIssuerKeys } from '@/db/queries/issuer-keys';
import { addingPresentation, findPresentation, usingPresentation } from '@/db/queries/presentations';
import { applications } from '@/db/schema';
import { claimThen, together } from '@/db/together';
import { aCertificate, aScheme } from '../support/competency-rows';
import { addPersonOf, makeShopAndCollege, noon } from '../support/shop-rows';
import { testDatabase } from '../support/test-database';

const lea = { learnerId: 'lea', organizationId: 'harbour' };
let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await makeShopAndCollege(db);
  await addPersonOf(db, 'lea', { harbour: 'learner' });
  await together(db, [addingIssuerKey(db, aKey('first'))]);
});

function aKey(kid: string, organizationId = 'harbour', createdAt = noon) {
  return { kid, organizationId, publicJwk: {}, sealedPrivate: `sealed ${kid}`, createdBy: 'ada', createdAt };
}

const add = (id: string, changes = {}) =>
  claimThen(db, addingCertificate(db, aCertificate({ ...lea, id, kid: 'first', ...changes })), []);

test('a certificate is stored once, at a place of its own', async () => {
  expect(await add('one', { statusIndex: 7 })).toBe(true);
  expect(await add('one', { statusIndex: 8 })).toBe(false);
  expect(await add('two', { statusIndex: 7 })).toBe(false);
  expect(await add('three', { statusIndex: 9 })).toBe(true);
  expect((await listTakenPlaces(db, 'harbour')).sort()).toEqual([7, 9]);
  expect(await listTakenPlaces(db, 'college')).toEqual([]);
  expect((await listCertificates(db, 'harbour', 10)).map(({ id }) => id)).toEqual(['one', 'three']);
});

test('what befalls a certificate is written only where nothing else befell it meanwhile', async () => {
  await add('one', { statusIndex: 7 });
  const event = { certificateId: 'one', reason: 'Asked', by: 'ada', at: noon } as const;
  const befall = (id: string, kind: 'suspended' | 'revoked', after: number) =>
    claimThen(db, addingCertificateEvent(db, { ...event, id, kind }, { after }), []);
  expect(await befall('a', 'suspended', 0)).toBe(true);
  expect(await befall('b', 'revoked', 0)).toBe(false);
  expect(await befall('c', 'revoked', 1)).toBe(true);
  expect((await listCertificateEvents(db, ['one'])).map(({ kind }) => kind)).toEqual(['suspended', 'revoked']);
  expect(await listStatusEvents(db, 'harbour')).toEqual([
    { place: 7, kind: 'suspended', reason: 'Asked' },
    { place: 7, kind: 'revoked', reason: 'Asked' },
  ]);
  expect(await listStatusEvents(db, 'college')).toEqual([]);
});

test('a showing is made once for a number, and used once', async () => {
  await add('one', { statusIndex: 7 });
  const showing = { certificateId: 'one', nonce: '7K4F', audience: 'A yard', madeAt: noon, endsAt: noon };
  const make = (id: string, nonce: string) => claimThen(db, addingPresentation(db, { ...showing, id, nonce }), []);
  expect(await make('a', '7K4F')).toBe(true);
  expect(await make('b', '7K4F')).toBe(false);
  expect(await make('b', '29QX')).toBe(true);
  expect(await claimThen(db, usingPresentation(db, 'a', noon), [])).toBe(true);
  expect(await claimThen(db, usingPresentation(db, 'a', noon), [])).toBe(false);
  expect((await findPresentation(db, 'a'))?.usedAt).toEqual(noon);
  expect((await findPresentation(db, 'b'))?.usedAt).toBeNull();
});

test('keys are retired and marked for their own organisation alone, and a mark stays', async () => {
  await together(db, [addingIssuerKey(db, aKey('theirs', 'college'))]);
  const later = new Date(noon.getTime() + 1000);
  await together(db, [retiringIssuerKeys(db, 'harbour', noon), addingIssuerKey(db, aKey('second', 'harbour', later))]);
  await together(db, [retiringIssuerKeys(db, 'harbour', later)]);
  const mark = (kid: string, organizationId: string, at: Date) =>
    claimThen(db, compromisingKey(db, { kid, organizationId, at }), []);
  expect(await mark('theirs', 'harbour', noon)).toBe(false);
  expect(await mark('second', 'harbour', noon)).toBe(true);
  expect(await mark('second', 'harbour', later)).toBe(false);
  expect(await listIssuerKeys(db, 'harbour')).toMatchObject([
    { kid: 'first', retiredAt: noon, compromisedAt: null },
    { kid: 'second', retiredAt: later, compromisedAt: noon },
  ]);
  expect(await listIssuerKeys(db, 'college')).toMatchObject([{ kid: 'theirs', retiredAt: null, compromisedAt: null }]);
  expect(JSON.stringify(await listIssuerKeys(db, 'harbour'))).not.toContain('sealed');
});

test('what was granted waits for its certificate until it has one, in its own organisation', async () => {
  const application = { ...lea, schemeId: 'helping-hand', scheme: aScheme(), appliedAt: noon };
  await db.insert(applications).values([
    { ...application, id: 'granted', state: 'granted', decidedBy: 'ada', decidedAt: noon },
    { ...application, id: 'open', state: 'open' },
    { ...application, id: 'refused', state: 'refused', decidedBy: 'ada', decidedAt: noon },
  ]);
  const waiting = async (organizationId: string) => (await listToIssue(db, organizationId, 10)).map(({ id }) => id);
  expect(await waiting('harbour')).toEqual(['granted']);
  expect(await waiting('college')).toEqual([]);
  expect(await findToIssue(db, 'college', 'granted')).toBeUndefined();
  expect(await findToIssue(db, 'harbour', 'open')).toBeUndefined();
  await add('one', { applicationId: 'granted' });
  expect(await waiting('harbour')).toEqual([]);
  expect(await findToIssue(db, 'harbour', 'granted')).toBeUndefined();
});
