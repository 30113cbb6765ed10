import { expect, test } from 'vitest';
import type { Issuer } from '@/lib/certificates/issuer-key';
import { signed } from '@/lib/certificates/jws';
import { signCertificate } from '@/lib/certificates/sign-certificate';
import { type Standing, verifyCertificate } from '@/lib/certificates/verify-certificate';
import { aCertificate, aKey, anIssuer, DAY, ISSUED, ISSUER } from '../../support/certificates';

const inForce: Standing = { code: 'in-force' };

function terms(trusted: readonly Issuer[], standing: Standing | undefined = inForce, now = ISSUED + DAY) {
  return { trusted, now, standingOf: async () => standing };
}

async function signedBy(key: Awaited<ReturnType<typeof aKey>>, at = ISSUED) {
  return signCertificate(await aCertificate(), key.signs, at);
}

function codeOf(verification: Awaited<ReturnType<typeof verifyCertificate>>): string {
  return verification.ok ? 'fine' : verification.refusal.code;
}

test('a certificate says after checking what was signed', async () => {
  const key = await aKey();
  const verification = await verifyCertificate(await signedBy(key), terms([anIssuer(key)]));
  expect(verification).toEqual({ ok: true, certificate: await aCertificate(), signedAt: ISSUED });
});

test('a retired key stands for what it signed before, and for nothing after', async () => {
  const key = await aKey({ retiredAt: ISSUED + DAY });
  const next = await aKey({ madeAt: ISSUED + DAY });
  const trusted = terms([anIssuer(next, key)]);
  expect(codeOf(await verifyCertificate(await signedBy(key), trusted))).toBe('fine');
  expect(codeOf(await verifyCertificate(await signedBy(next, ISSUED + DAY), trusted))).toBe('fine');
  expect(codeOf(await verifyCertificate(await signedBy(key, ISSUED + DAY), trusted))).toBe('wrong-key');
});

test('a key stands for nothing dated before it was made', async () => {
  const key = await aKey({ madeAt: ISSUED + 1000 });
  expect(codeOf(await verifyCertificate(await signedBy(key), terms([anIssuer(key)])))).toBe('wrong-key');
});

test('a compromised key stands for what it signed before the day, and for nothing from it', async () => {
  const key = await aKey({ compromisedFrom: ISSUED + 1000, retiredAt: ISSUED + 1000 });
  const trusted = terms([anIssuer(key)]);
  expect(codeOf(await verifyCertificate(await signedBy(key), trusted))).toBe('fine');
  expect(codeOf(await verifyCertificate(await signedBy(key, ISSUED + 1000), trusted))).toBe('key-compromised');
});

test('another key under the name of ours counts as tampering, one of ours under another name as the wrong key', async () => {
  const [ours, other, stranger] = await Promise.all([aKey(), aKey(), aKey()]);
  const trusted = terms([anIssuer(ours, other)]);
  const certificate = await aCertificate();
  const forged = await signCertificate(certificate, { id: ours.signs.id, jwk: stranger.jwk }, ISSUED);
  expect(codeOf(await verifyCertificate(forged, trusted))).toBe('tampered');
  const swapped = await signCertificate(certificate, { id: ours.signs.id, jwk: other.jwk }, ISSUED);
  expect(codeOf(await verifyCertificate(swapped, trusted))).toBe('wrong-key');
  expect(codeOf(await verifyCertificate(await signedBy(stranger), trusted))).toBe('unknown-key');
});

test('a key of another issuer signs nothing of ours', async () => {
  const [ours, theirs] = await Promise.all([aKey(), aKey()]);
  const trusted = terms([anIssuer(ours), { id: 'https://elsewhere.example/issuers/2', keys: [theirs.key] }]);
  expect(codeOf(await verifyCertificate(await signedBy(theirs), trusted))).toBe('wrong-key');
});

test('an issuer that is not known here is named', async () => {
  const key = await aKey();
  const verification = await verifyCertificate(await signedBy(key), terms([{ id: `${ISSUER}-2`, keys: [key.key] }]));
  expect(verification).toEqual({ ok: false, refusal: { code: 'wrong-issuer', issuer: ISSUER } });
});

test('a certificate that nobody here issued is refused though its signature fits, and nothing of it is told', async () => {
  const key = await aKey();
  const unknown = { ...terms([anIssuer(key)]), standingOf: async () => undefined };
  expect(await verifyCertificate(await signedBy(key), unknown)).toEqual({ ok: false, refusal: { code: 'not-ours' } });
});

test('a certificate is good from its first second until its last', async () => {
  const key = await aKey();
  const [compact, trusted, { validFrom, validUntil }] = [await signedBy(key), [anIssuer(key)], await aCertificate()];
  const codeAt = async (now: number) => codeOf(await verifyCertificate(compact, terms(trusted, inForce, now)));
  expect(await codeAt(validFrom - 1)).toBe('not-yet-valid');
  expect(await codeAt(validFrom)).toBe('fine');
  expect(await codeAt(validUntil - 1)).toBe('fine');
  expect(await codeAt(validUntil)).toBe('expired');
});

test('what the records say refuses with its reason, and before the date where it is for good', async () => {
  const key = await aKey();
  const [compact, trusted, { validUntil }] = [await signedBy(key), [anIssuer(key)], await aCertificate()];
  const refusal = async (standing: Standing, now: number) => {
    const verification = await verifyCertificate(compact, terms(trusted, standing, now));
    return verification.ok ? undefined : verification.refusal;
  };
  const suspended = { code: 'suspended', reason: 'An appeal is open' } as const;
  const revoked = { code: 'revoked', reason: 'Somebody else sat the check' } as const;
  expect(await refusal(suspended, ISSUED)).toEqual(suspended);
  expect(await refusal(revoked, ISSUED)).toEqual(revoked);
  expect(await refusal({ code: 'superseded' }, ISSUED)).toEqual({ code: 'superseded' });
  expect(await refusal(suspended, validUntil)).toEqual({ code: 'expired', since: validUntil });
  expect(await refusal(revoked, validUntil)).toEqual(revoked);
});

test.each<[string, Record<string, unknown>, string]>([
  ['says another id', { jti: 'https://certificates.gullrock.example/verify/other' }, 'jti'],
  ['says another holder', { sub: 'urn:uuid:other' }, 'sub'],
  ['begins at another moment', { nbf: ISSUED / 1000 - 1 }, 'nbf'],
  ['ends at another moment', { exp: 4_102_444_800 }, 'exp'],
  [
    'has no criteria',
    { credentialSubject: { id: 'urn:x', type: ['AchievementSubject'] } },
    'credentialSubject.achievement',
  ],
  ['has no status', { credentialStatus: undefined }, 'credentialStatus'],
  ['has a date without a zone', { validUntil: '2028-03-02T12:00:00' }, 'validUntil'],
  ['is no badge', { type: ['VerifiableCredential'] }, 'type'],
])('a signed document that %s is refused with the place', async (_, changes, at) => {
  const key = await aKey();
  const parts = (await signedBy(key)).split('.');
  const payload = JSON.parse(Buffer.from(parts[1] ?? '', 'base64url').toString());
  const compact = await signed({ ...payload, ...changes }, 'JWT', key.signs);
  const verification = await verifyCertificate(compact, terms([anIssuer(key)]));
  expect(verification).toEqual({ ok: false, refusal: { code: 'schema', at } });
});

test('what is no document of ours is not read', async () => {
  const key = await aKey();
  const compact = await signedBy(key);
  const [header, payload = '', signature] = compact.split('.');
  const none = Buffer.from('{"alg":"none"}').toString('base64url');
  const embedded = Buffer.from(JSON.stringify({ alg: 'EdDSA', kid: key.key.id, typ: 'JWT', jwk: key.key.jwk }));
  const presented = await signed(JSON.parse(Buffer.from(payload, 'base64url').toString()), 'vp+jwt', key.signs);
  const wrong = [
    '',
    'certificate',
    `${header}.${payload}`,
    `${none}.${payload}.`,
    `${none}.${payload}.${signature}`,
    `${embedded.toString('base64url')}.${payload}.${signature}`,
    `${compact}.`,
    `${compact}=`,
    presented,
    'a'.repeat(200_000),
  ];
  for (const text of wrong) {
    expect(codeOf(await verifyCertificate(text, terms([anIssuer(key)]))), text.slice(0, 40)).toBe('unreadable');
  }
});
