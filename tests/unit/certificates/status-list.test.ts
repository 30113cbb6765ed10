import { gzipSync } from 'fflate';
import { expect, test } from 'vitest';
import { standingFromLists } from '@/lib/certificates/standing-from-lists';
import { readStatusList, signStatusList } from '@/lib/certificates/status-credential';
import { decodedList, encodedList, freePlace, LEAST_PLACES, statusAt } from '@/lib/certificates/status-list';
import { aCertificate, aKey, anIssuer, DAY, ISSUED, ISSUER } from '../../support/certificates';

function bits(set: readonly number[]): Uint8Array {
  const decoded = decodedList(encodedList(set));
  if (!decoded) throw new Error('The list does not read');
  return decoded;
}

test('exactly the places that were set are set', () => {
  const set = [0, 7, 8, 23, LEAST_PLACES - 1];
  const list = bits(set);
  const found = Array.from({ length: LEAST_PLACES }, (_, place) => place).filter((place) => statusAt(list, place));
  expect(found).toEqual(set);
  expect(statusAt(list, LEAST_PLACES)).toBeUndefined();
});

// RFC 1952, section 2.3: bytes 4 to 7 hold the moment of packing, zero where none is told.
test('a list says nothing of when it was packed, so that the same is always written the same', () => {
  expect([...Buffer.from(encodedList([5]).slice(1), 'base64url').subarray(4, 8)]).toEqual([0, 0, 0, 0]);
});

test('a place outside the list is refused when it is written', () => {
  for (const place of [-1, 0.5, LEAST_PLACES]) expect(() => encodedList([place])).toThrow(RangeError);
});

test('a list that is too short, too long or none is not read', () => {
  const packed = (length: number) => `u${Buffer.from(gzipSync(new Uint8Array(length))).toString('base64url')}`;
  const lies = Buffer.from(gzipSync(new Uint8Array(16_384)));
  lies.writeUInt32LE(20_000, lies.length - 4);
  expect(decodedList(packed(16_384))).toHaveLength(16_384);
  const wrong = [
    '',
    'u',
    'uAAAA',
    packed(16_383),
    packed(17 * 1024 * 1024),
    packed(16_384).slice(1),
    `z${packed(16_384).slice(1)}`,
    packed(16_384).slice(0, -8),
    `u${lies.toString('base64url')}`,
  ];
  for (const text of wrong) expect(decodedList(text), text.slice(0, 20)).toBeUndefined();
});

test('a place is drawn among the free ones, down to the last', () => {
  const taken = new Set([0, 1, 3]);
  expect([0, 1].map((draw) => freePlace(taken, () => draw, 5))).toEqual([2, 4]);
  expect(freePlace(new Set([0, 1, 2, 3, 4]), () => 0, 5)).toBeUndefined();
});

test('a signed list is read by whoever trusts its issuer, while it is fresh', async () => {
  const key = await aKey();
  const id = `${ISSUER}/status/suspension`;
  const list = { id, issuer: ISSUER, purpose: 'suspension', set: [94_567] } as const;
  const compact = await signStatusList({ ...list, validFrom: ISSUED, validUntil: ISSUED + DAY }, key.signs);
  const terms = { id, purpose: 'suspension', trusted: [anIssuer(key)], now: ISSUED } as const;
  expect(statusAt((await readStatusList(compact, terms)) ?? new Uint8Array(), 94_567)).toBe(true);
  const others = [
    { ...terms, purpose: 'revocation' },
    { ...terms, id: `${ISSUER}/status/revocation` },
    { ...terms, trusted: [anIssuer(await aKey())] },
    { ...terms, now: ISSUED - 1 },
    { ...terms, now: ISSUED + DAY },
  ] as const;
  for (const other of others) expect(await readStatusList(compact, other)).toBeUndefined();
});

test('the two lists together tell a suspension from a revocation', async () => {
  const { status } = await aCertificate();
  const standing = (suspended: number[], revoked: number[]) =>
    standingFromLists(status, { suspensions: bits(suspended), revocations: bits(revoked) })?.code;
  expect(standing([], [])).toBe('in-force');
  expect(standing([status.index], [])).toBe('suspended');
  expect(standing([status.index], [status.index])).toBe('revoked');
});
