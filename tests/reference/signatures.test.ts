import { createPublicKey, verify } from 'node:crypto';
import * as Multikey from '@digitalbazaar/ed25519-multikey';
import { verifyAsync } from '@noble/ed25519';
import { expect, test } from 'vitest';
import { thumbprint } from '@/lib/certificates/issuer-key';
import { signatureFits, signed } from '@/lib/certificates/jws';
import { signCertificate } from '@/lib/certificates/sign-certificate';
import { aCertificate, aKey, ISSUED } from '../support/certificates';

// RFC 8037, appendix A.1: the key; A.2 its public half; A.3 its thumbprint; A.4 a signed text. Key and thumbprint seen in
// public test suites that quote the RFC, the signed text from memory: the signature is determined by key and text, so that
// any other would not fit.
const rfc8037 = {
  private: {
    kty: 'OKP',
    crv: 'Ed25519',
    d: 'nWGxne_9WmC6hEr0kuwsxERJxWl7MmkZcDusAxyuf2A',
    x: '11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo',
  },
  thumbprint: 'kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k',
  jws: 'eyJhbGciOiJFZERTQSJ9.RXhhbXBsZSBvZiBFZDI1NTE5IHNpZ25pbmc.hgyY0il_MGCjP0JzlnLWG1PPOt7-09PGcvMg3AIbQR6dWbhijcNR4ki4iylGjg5BhVsPt9g7sVvpAr_MuM0KAg',
} as const;

test('the signature that RFC 8037 prints fits its key, and no other text', async () => {
  expect(await signatureFits(rfc8037.jws, rfc8037.private)).toBe(true);
  const [header, , signature] = rfc8037.jws.split('.');
  const other = Buffer.from('Example of Ed25519 signinG').toString('base64url');
  expect(await signatureFits(`${header}.${other}.${signature}`, rfc8037.private)).toBe(false);
});

test('a key is named by the thumbprint that RFC 8037 prints', async () => {
  expect(await thumbprint(rfc8037.private)).toBe(rfc8037.thumbprint);
});

// Three readers of Ed25519 that share nothing with the library that signs: one written in JavaScript alone, the one of the
// credentials community, and OpenSSL called without any library between.
test('what we sign is verified by others', async () => {
  const { key, signs } = await aKey();
  const compact = await signCertificate(await aCertificate(), signs, ISSUED);
  const [header, payload, signature = ''] = compact.split('.');
  const [text, bytes] = [Buffer.from(`${header}.${payload}`), Buffer.from(signature, 'base64url')];
  const publicKey = Buffer.from(key.jwk.x, 'base64url');
  const multikey = await Multikey.fromJwk({ jwk: key.jwk, secretKey: false });
  const opinions = async (what: Buffer) => [
    await verifyAsync(bytes, what, publicKey),
    await multikey.verifier().verify({ data: what, signature: bytes }),
    verify(null, what, createPublicKey({ key: { ...key.jwk }, format: 'jwk' }), bytes),
  ];
  expect(await opinions(text)).toEqual([true, true, true]);
  text[40] = (text[40] ?? 0) ^ 1;
  expect(await opinions(text)).toEqual([false, false, false]);
});

// RFC 8032, section 5.1.6: the same key signs the same text the same, so that a certificate can be told from its bytes.
test('the same signed again is the same', async () => {
  const key = { id: 'https://example.org/key', jwk: rfc8037.private };
  expect(await signed({ iss: 'x' }, 'JWT', key)).toBe(await signed({ iss: 'x' }, 'JWT', key));
});
