import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { listBackUps, makeBackUp, openBackUp } from '@/app/_server/upkeep/back-ups';
import { testDatabase } from '../../support/test-database';

const now = new Date(Date.UTC(2026, 2, 9, 17, 4, 5, 678));
const name = '20260309T170405Z-0123456789abcdef0123.db';
let data = '';
let folder = '';

beforeEach(() => {
  data = mkdtempSync(join(tmpdir(), 'faultwright-back-ups-'));
  folder = join(data, 'back-ups');
});
afterEach(() => rmSync(data, { recursive: true }));

function keep(file: string, text = 'a back-up'): void {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, file), text);
}

async function textOf(file: string): Promise<string | undefined> {
  const body = await openBackUp(file, folder);
  return body && (await buffer(body)).toString();
}

describe('a back-up', () => {
  test('is named after the moment it was made at, kept from others, and can be fetched whole', async () => {
    const file = await makeBackUp(testDatabase(), now, folder);
    expect(file).toMatch(/^20260309T170405Z-[0-9a-f]{20}\.db$/);
    expect(statSync(folder).mode & 0o777).toBe(0o700);
    expect(statSync(join(folder, file)).mode & 0o777).toBe(0o600);
    const body = await openBackUp(file, folder);
    const bytes = body && (await buffer(body));
    expect(bytes).toEqual(readFileSync(join(folder, file)));
    expect(bytes?.subarray(0, 15).toString()).toBe('SQLite format 3');
  });

  test('is never put in the place of another of the same second', async () => {
    const files = [await makeBackUp(testDatabase(), now, folder), await makeBackUp(testDatabase(), now, folder)];
    expect(new Set((await listBackUps(folder)).map(({ file }) => file))).toEqual(new Set(files));
    expect(files[0]).not.toBe(files[1]);
  });
});

describe('the list of back-ups', () => {
  test('is empty where none was made yet', async () => {
    expect(await listBackUps(folder)).toEqual([]);
  });

  test('tells when each was made and how large it is, newest first, and nothing else of what lies there', async () => {
    const older = '20251231T235959Z-fedcba9876543210fedc.db';
    keep(older, 'old');
    keep(name);
    for (const other of ['notes.txt', `${name}.0123456789abcdef`, `x${name}`, name.replace('0309', '1399')])
      keep(other);
    expect(await listBackUps(folder)).toEqual([
      { file: name, madeAt: new Date(Date.UTC(2026, 2, 9, 17, 4, 5)), bytes: 9 },
      { file: older, madeAt: new Date(Date.UTC(2025, 11, 31, 23, 59, 59)), bytes: 3 },
    ]);
  });
});

describe('what is asked for as a back-up', () => {
  beforeEach(() => {
    keep(name);
    writeFileSync(join(data, 'faultwright.db'), 'the database itself');
    writeFileSync(join(data, 'secret'), 'the secret');
  });

  test('is found under its own name', async () => {
    expect(await textOf(name)).toBe('a back-up');
  });

  test.each([
    '',
    '.',
    '..',
    '../faultwright.db',
    '../secret',
    '..%2Ffaultwright.db',
    '%2e%2e%2fsecret',
    '..\\secret',
    `./${name}`,
    `../back-ups/${name}`,
    `..%2Fback-ups%2F${name}`,
    `${name}/`,
    `${name}/../../secret`,
    `${name}\0`,
    `${name}%00`,
    `../secret\0${name}`,
    `${name}\n`,
    ` ${name}`,
    name.toUpperCase(),
    name.replace('.db', ''),
    '20260309T170405Z-ffffffffffffffffffff.db',
  ])('is not found under %j', async (file) => {
    expect(await openBackUp(file, folder)).toBeUndefined();
  });

  test('is not found as an absolute path', async () => {
    expect(await openBackUp(join(folder, name), folder)).toBeUndefined();
  });

  test('is not found where a link leads elsewhere, though its name is a back-up’s', async () => {
    const link = '20260310T000000Z-0123456789abcdef0123.db';
    symlinkSync(join(data, 'secret'), join(folder, link));
    expect(await openBackUp(link, folder)).toBeUndefined();
    expect((await listBackUps(folder)).map(({ file }) => file)).toEqual([name]);
  });

  test('is not found where it is a folder', async () => {
    const inner = '20260310T000000Z-0123456789abcdef0123.db';
    mkdirSync(join(folder, inner));
    expect(await openBackUp(inner, folder)).toBeUndefined();
    expect((await listBackUps(folder)).map(({ file }) => file)).toEqual([name]);
  });
});
