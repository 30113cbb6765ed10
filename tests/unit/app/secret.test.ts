import { spawn } from 'node:child_process';
import { chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { storedSecret } from '@/app/_server/secret';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'faultwright-secret-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

test('a secret is made once, for its owner only, and stays', () => {
  const inside = join(folder, 'not', 'yet', 'there');
  const made = storedSecret(inside);
  expect(made).toMatch(/^[\w-]{43}$/);
  expect(storedSecret(inside)).toBe(made);
  expect(readdirSync(inside)).toEqual(['secret']);
  expect(statSync(join(inside, 'secret')).mode & 0o777).toBe(0o600);
});

test('two installations have different secrets', () => {
  expect(storedSecret(join(folder, 'one'))).not.toBe(storedSecret(join(folder, 'other')));
});

test('processes that start at once end up with the same secret', async () => {
  const secrets = await Promise.all(Array.from({ length: 5 }, () => secretOfAnother(folder, Date.now() + 3000)));
  expect(secrets[0]).toMatch(/^[\w-]{43}\n$/);
  expect(new Set(secrets).size).toBe(1);
  expect(readdirSync(folder)).toEqual(['secret']);
});

test('a secret that others could read is kept from them and still used', () => {
  const file = join(folder, 'secret');
  const before = 'as-it-was-stored-by-somebody-else-before';
  writeFileSync(file, `${before}\n`);
  chmodSync(file, 0o644);
  expect(storedSecret(folder)).toBe(before);
  expect(statSync(file).mode & 0o777).toBe(0o600);
});

test('a file that is too short to be a secret is refused and left as it is', () => {
  const file = join(folder, 'secret');
  writeFileSync(file, '', { mode: 0o600 });
  expect(() => storedSecret(folder)).toThrow(`${file} holds no secret of 32 characters or more`);
  expect(readFileSync(file, 'utf8')).toBe('');
});

/** What another process says, which asks for the secret at that moment. */
function secretOfAnother(from: string, moment: number): Promise<string> {
  const code = `
    import { storedSecret } from './app/_server/secret.ts';
    while (Date.now() < ${moment});
    console.log(storedSecret(${JSON.stringify(from)}));`;
  const process_ = spawn(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', code]);
  return text(process_.stdout);
}
