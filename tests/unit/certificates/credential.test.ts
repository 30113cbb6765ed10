import { expect, test } from 'vitest';
import { worthShowing } from '@/lib/certificates/certificate';
import { credentialOf } from '@/lib/certificates/credential';
import { hashedName, isNamed } from '@/lib/certificates/hashed-name';
import { aCertificate } from '../../support/certificates';

test('no result below its cut stands in a certificate', async () => {
  const [reached] = (await aCertificate()).results;
  if (!reached) throw new Error('The certificate shows no result');
  const results = [reached, { ...reached, id: 'fuel-quality', value: 0.49 }, { ...reached, id: 'priming', value: 0.5 }];
  expect(worthShowing(results).map(({ id }) => id)).toEqual(['filtration', 'priming']);
  const { credentialSubject } = credentialOf(await aCertificate({ results }));
  expect(JSON.stringify(credentialSubject)).not.toContain('fuel-quality');
  expect(credentialSubject.result).toHaveLength(2);
});

test('without consent there is neither a name nor a result in it, nor an empty place for them', async () => {
  const { holder } = await aCertificate();
  const bare = credentialOf(await aCertificate({ holder: { ...holder, name: null }, results: [] }));
  expect(bare.credentialSubject).not.toHaveProperty('identifier');
  expect(bare.credentialSubject).not.toHaveProperty('result');
  expect(bare.credentialSubject.achievement).not.toHaveProperty('resultDescription');
});

test('the name itself never stands in it', async () => {
  expect(JSON.stringify(credentialOf(await aCertificate()))).not.toMatch(/Kit|Marlowe/);
});

// Open Badges 3.0, IdentityHash: its own example hashes 'a@example.com' salted with 'Kosher' (seen in the official schema's comment).
test('a name is hashed as the standard hashes its example', async () => {
  const { hash } = await hashedName('a@example.com', 'Kosher');
  expect(hash).toBe('sha256$b5809d8a92f8858436d7e6b87c12ebc0ae1eac4baecc2c0b913aee2c922ef399');
});

test('a name is told again however it is spaced or composed, and no other name is', async () => {
  const hashed = await hashedName('Zoë  Ness', 'salt');
  expect(await isNamed(hashed, ' Zoe\u0308 Ness')).toBe(true);
  expect(await isNamed(hashed, 'Zoe Ness')).toBe(false);
});
