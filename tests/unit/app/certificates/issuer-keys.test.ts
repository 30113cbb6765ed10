import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { migrateDatabase } from '@/db/client';
import { addingIssuerKey } from '@/db/queries/issuer-keys';
import { addingOrganization } from '@/db/queries/organizations';
import { together } from '@/db/together';
import { anOrganization } from '../../../support/people-rows';

const data = mkdtempSync(join(tmpdir(), 'faultwright-keys-'));
const noon = new Date(Date.UTC(2026, 0, 1, 12));

/** The installation with one secret or another. */
async function installation(secret: string) {
  vi.resetModules();
  vi.stubEnv('FAULTWRIGHT_DATA', data);
  vi.stubEnv('FAULTWRIGHT_LOG', 'silent');
  vi.stubEnv('FAULTWRIGHT_SECRET', secret);
  const { database } = await import('@/app/_server/database');
  return { db: database(), ...(await import('@/app/_server/certificates/issuer-keys')) };
}

beforeAll(async () => {
  const { db, newIssuerKey } = await installation('a secret of an installation that is long enough');
  migrateDatabase(db, 'db/migrations');
  const { signer: _, ...key } = await newIssuerKey('harbour', 'ada', noon);
  await together(db, [addingOrganization(db, anOrganization()), addingIssuerKey(db, key)]);
});

afterAll(() => rmSync(data, { recursive: true }));

test('an organisation signs with its own key, and another with none', async () => {
  const { findSigner, readIssuer } = await installation('a secret of an installation that is long enough');
  const signer = await findSigner('harbour');
  expect((await readIssuer('harbour')).keys.map(({ id }) => id)).toEqual([signer?.id]);
  expect(await findSigner('college')).toBeUndefined();
});

test('with another secret nothing is signed any more, but everything can be checked', async () => {
  const { findSigner, readIssuers } = await installation('another secret of an installation, long enough');
  expect(await findSigner('harbour')).toBeUndefined();
  expect((await readIssuers()).map(({ keys }) => keys.length)).toEqual([1]);
});
