import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readCredential } from '@/lib/certificates/read-credential';
import { signCertificate } from '@/lib/certificates/sign-certificate';
import { decodedList, encodedList, LEAST_PLACES, statusAt } from '@/lib/certificates/status-list';
import { verifyCertificate } from '@/lib/certificates/verify-certificate';
import { aCertificate, aKey, anIssuer, ISSUED } from '../support/certificates';

const seed = 20_261_127;
const SIGNS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

test('a certificate with any sign changed is refused', { timeout: 120_000 }, async () => {
  const key = await aKey();
  const compact = await signCertificate(await aCertificate(), key.signs, ISSUED);
  const terms = { trusted: [anIssuer(key)], now: ISSUED, standingOf: async () => ({ code: 'in-force' }) as const };
  expect(await verifyCertificate(compact, terms)).toMatchObject({ ok: true });
  for (let at = 0; at < compact.length; at++) {
    const sign = compact[at] ?? '';
    const other = sign === '.' ? 'A' : (SIGNS[(SIGNS.indexOf(sign) + 1 + (at % 62)) % 64] ?? '');
    const { ok } = await verifyCertificate(`${compact.slice(0, at)}${other}${compact.slice(at + 1)}`, terms);
    expect(ok, `sign ${at}`).toBe(false);
  }
});

test('the last sign of a signature has one way to be written', async () => {
  const key = await aKey();
  const compact = await signCertificate(await aCertificate(), key.signs, ISSUED);
  const terms = { trusted: [anIssuer(key)], now: ISSUED, standingOf: async () => ({ code: 'in-force' }) as const };
  const good = [];
  for (const sign of SIGNS) {
    if ((await verifyCertificate(compact.slice(0, -1) + sign, terms)).ok) good.push(sign);
  }
  expect(good).toEqual([compact.at(-1)]);
});

test('whatever is handed over is answered and not thrown at', async () => {
  const key = await aKey();
  const terms = { trusted: [anIssuer(key)], now: ISSUED, standingOf: async () => undefined };
  const texts = fc.oneof(
    fc.string({ unit: 'binary' }),
    fc.base64String(),
    fc.stringMatching(/^[\w-]+\.[\w-]+\.[\w-]+$/),
  );
  await fc.assert(
    fc.asyncProperty(texts, async (text) => {
      expect((await verifyCertificate(text, terms)).ok).toBe(false);
    }),
    { seed, numRuns: 300 },
  );
  fc.assert(
    fc.property(fc.anything(), (payload) => {
      expect(readCredential(payload).ok).toBe(false);
    }),
    { seed, numRuns: 300 },
  );
});

test('a list reads back as it was written', () => {
  const places = fc.uniqueArray(fc.nat({ max: LEAST_PLACES - 1 }), { maxLength: 40 });
  fc.assert(
    fc.property(places, fc.nat({ max: LEAST_PLACES - 1 }), (set, other) => {
      const bits = decodedList(encodedList(set)) ?? new Uint8Array();
      expect(set.every((place) => statusAt(bits, place))).toBe(true);
      expect(statusAt(bits, other)).toBe(set.includes(other));
    }),
    { seed, numRuns: 60 },
  );
});
