import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { publishedKeySet } from '@/lib/certificates/issuer-key';
import { signCertificate } from '@/lib/certificates/sign-certificate';
import { signStatusList } from '@/lib/certificates/status-credential';
import type { StatusPurpose } from '@/lib/certificates/status-list';
import { aCertificate, aKey, DAY, ISSUER, type SigningKey } from '../../support/certificates';
import { runCommandLine } from '../../support/command-line';

const folder = mkdtempSync(join(tmpdir(), 'faultwright-certificate-'));
const now = Date.now();
let key: SigningKey;

beforeAll(async () => {
  key = await aKey();
  const whole = Math.floor(now / 1000) * 1000;
  const certificate = await aCertificate({ validFrom: whole - DAY, validUntil: whole + DAY });
  put('good.jwt', await signCertificate(certificate, key.signs, now));
  put('keys.json', JSON.stringify(publishedKeySet([key.key])));
  put('other-keys.json', JSON.stringify(publishedKeySet([(await aKey()).key])));
  for (const [name, purpose, set] of [
    ['none-suspended', 'suspension', []],
    ['suspended', 'suspension', [certificate.status.index]],
    ['none-revoked', 'revocation', []],
    ['revoked', 'revocation', [certificate.status.index]],
  ] as const)
    put(`${name}.jwt`, await list(purpose, set, whole));
  put('old.jwt', await list('suspension', [], whole - 3 * DAY));
});

afterAll(() => rmSync(folder, { recursive: true }));

function list(purpose: StatusPurpose, set: readonly number[], validFrom: number): Promise<string> {
  const id = `${ISSUER}/status/${purpose}`;
  return signStatusList({ id, issuer: ISSUER, purpose, set, validFrom, validUntil: validFrom + 2 * DAY }, key.signs);
}

function put(name: string, text: string): void {
  writeFileSync(join(folder, name), text);
}

function check(suspensions: string, revocations: string, keys = 'keys.json', ...more: string[]) {
  const files = { file: 'good.jwt', keys, suspensions: `${suspensions}.jwt`, revocations: `${revocations}.jwt` };
  const args = Object.entries(files).flatMap(([name, file]) => [`--${name}`, join(folder, file)]);
  return runCommandLine('check-certificate', ...args, ...more);
}

test('a certificate is checked with nothing but what its issuer publishes', () => {
  expect(check('none-suspended', 'none-revoked').stdout).toMatch(/^good: Low-pressure diagnosis, version 2, until /);
  expect(check('suspended', 'none-revoked').stdout).toBe('refused: suspended\n');
  expect(check('suspended', 'revoked').stdout).toBe('refused: revoked\n');
  expect(check('none-suspended', 'none-revoked', 'other-keys.json').stdout).toBe('refused: unknown-key\n');
  const { ok, certificate } = JSON.parse(check('none-suspended', 'none-revoked', 'keys.json', '--json').stdout);
  expect([ok, certificate.scheme.name]).toEqual([true, 'Low-pressure diagnosis']);
});

test('a list that is too old, or for the other purpose, is not gone by', () => {
  for (const suspensions of ['old', 'none-revoked']) {
    const { status, stderr } = check(suspensions, 'none-revoked');
    expect(status).not.toBe(0);
    expect(stderr).toContain('too old');
  }
});

test('what is no key set, or not there, is named', () => {
  expect(check('none-suspended', 'none-revoked', 'good.jwt').stderr).toContain('no key set');
  expect(check('missing', 'none-revoked').stderr).toContain('missing.jwt');
});
