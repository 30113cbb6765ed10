import { expect, test } from 'vitest';
import {
  PRESENTATION_LASTS,
  type PresentationRequest,
  signPresentation,
  verifyPresentation,
} from '@/lib/certificates/presentation';
import { signCertificate } from '@/lib/certificates/sign-certificate';
import type { Standing } from '@/lib/certificates/verify-certificate';
import { aCertificate, aKey, anIssuer, DAY, ISSUED, ISSUER } from '../../support/certificates';

const shown = ISSUED + DAY;
const request: PresentationRequest = {
  audience: 'Cormorant Haulage (invented)',
  nonce: 'k7f2-9qxm',
  expiresAt: shown + 2 * PRESENTATION_LASTS,
  usedAt: null,
};

async function presented(holder?: string) {
  const key = await aKey();
  const certificate = await aCertificate();
  const compact = await signCertificate(certificate, key.signs, ISSUED);
  const what = { id: 'urn:uuid:1', issuer: ISSUER, holder: holder ?? certificate.holder.id, certificate: compact };
  return { key, certificate, compact, presentation: await signPresentation(what, request, key.signs, shown) };
}

function terms(key: Awaited<ReturnType<typeof aKey>>, now = shown, standing: Standing = { code: 'in-force' }) {
  return { trusted: [anIssuer(key)], now, standingOf: async () => standing };
}

test('a presentation shows its certificate to who asked for it', async () => {
  const { key, certificate, presentation } = await presented();
  const verification = await verifyPresentation(presentation, request, terms(key));
  expect(verification).toEqual({ ok: true, certificate, signedAt: ISSUED });
});

test('a presentation is refused by anybody else, for any other request, later, and the second time', async () => {
  const { key, presentation } = await presented();
  const refusal = async (changes: Partial<PresentationRequest>, now = shown) => {
    const verification = await verifyPresentation(presentation, { ...request, ...changes }, terms(key, now));
    return verification.ok ? undefined : verification.refusal;
  };
  expect(await refusal({ audience: 'Somebody else' })).toEqual({ code: 'wrong-audience', audience: request.audience });
  expect(await refusal({ nonce: 'other' })).toEqual({ code: 'wrong-nonce' });
  expect(await refusal({ usedAt: shown })).toEqual({ code: 'replayed', at: shown });
  expect(await refusal({}, shown + PRESENTATION_LASTS - 1)).toBeUndefined();
  expect(await refusal({}, shown + PRESENTATION_LASTS)).toEqual({ code: 'stale', since: shown + PRESENTATION_LASTS });
  expect(await refusal({ expiresAt: shown })).toEqual({ code: 'stale', since: shown });
});

test('what is wrong with the certificate is wrong with its presentation', async () => {
  const { key, presentation } = await presented();
  const revoked = { code: 'revoked', reason: 'Issued by mistake' } as const;
  expect(await verifyPresentation(presentation, request, terms(key, shown, revoked))).toMatchObject({
    refusal: revoked,
  });
});

test('somebody else cannot present it, nor can a certificate stand for its presentation', async () => {
  const { key, presentation } = await presented('urn:uuid:somebody-else');
  expect(await verifyPresentation(presentation, request, terms(key))).toEqual({
    ok: false,
    refusal: { code: 'schema', at: 'sub' },
  });
  const { compact, key: other } = await presented();
  expect(await verifyPresentation(compact, request, terms(other))).toEqual({
    ok: false,
    refusal: { code: 'unreadable' },
  });
});
