import { beforeAll, expect, test, vi } from 'vitest';

type Seal = typeof import('@/app/_server/certificates/seal');
const SECRET = 'a secret of an installation that is long enough';

async function sealWith(secret: string): Promise<Seal> {
  vi.resetModules();
  vi.stubEnv('FAULTWRIGHT_SECRET', secret);
  return import('@/app/_server/certificates/seal');
}

let seal: Seal;
beforeAll(async () => {
  seal = await sealWith(SECRET);
});

test('what is sealed opens under its name, and shows nothing of itself', () => {
  const text = '{"d":"the private half"}';
  const closed = seal.sealed(text, 'key one');
  expect(seal.unsealed(closed, 'key one')).toBe(text);
  expect(Buffer.from(closed, 'base64url').toString('latin1')).not.toContain('private');
  expect(seal.sealed(text, 'key one')).not.toBe(closed);
});

test('it opens neither under another name nor changed, nor with another secret', async () => {
  const closed = seal.sealed('text', 'key one');
  expect(() => seal.unsealed(closed, 'key two')).toThrow();
  const bytes = Buffer.from(closed, 'base64url');
  for (const at of [0, 12, bytes.length - 1]) {
    const changed = Buffer.from(bytes);
    changed[at] = (changed[at] ?? 0) ^ 1;
    expect(() => seal.unsealed(changed.toString('base64url'), 'key one')).toThrow();
  }
  const other = await sealWith(`${SECRET}, another`);
  expect(() => other.unsealed(closed, 'key one')).toThrow();
});
