import { randomBytes } from 'node:crypto';
import { once } from 'node:events';
import { cpSync, readdirSync, rmSync, symlinkSync } from 'node:fs';
import { type IncomingMessage, request } from 'node:http';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { sql } from 'drizzle-orm';
import { openDatabase } from '@/db/client';
import { listClasses } from '@/db/queries/classes';
import { listLogEntries } from '@/db/queries/log-entries';
import { listMemberships } from '@/db/queries/members';
import { findBySlug } from '@/db/queries/organizations';
import { findUserByAddress } from '@/db/queries/users';
import { callAction } from '../support/call-action';
import { harbour, newSession, people, SESSION_COOKIE } from '../support/people';
import { freshData, openPlace, type Place, placeFor, SHARED_PORT, startServer, untilUp } from '../support/server';
import { expect, test } from './fixtures';
import { signInAs } from './sign-in';
import { signInNew, somebodyNew } from './somebody-new';

test.use({ as: 'keeper' });

const shared = placeFor(SHARED_PORT);
const folder = join(shared.data, 'back-ups');

test('a keeper makes a back-up, downloads it whole, and both stand in the log', async ({ page }, testInfo) => {
  await page.goto('/upkeep');
  await expect(page.getByText('Whoever has the file has all of it.')).toBeVisible();
  await page.getByRole('button', { name: 'Back up now' }).click();
  await expect(page.getByText('The back-up is made and listed here.')).toBeVisible();
  const downloading = page.waitForEvent('download');
  await page
    .getByRole('link', { name: /^Download the one of/ })
    .first()
    .click();
  const download = await downloading;
  const file = download.suggestedFilename();
  expect(file).toMatch(/^\d{8}T\d{6}Z-[0-9a-f]{20}\.db$/);

  const copy = testInfo.outputPath('restored.db');
  await download.saveAs(copy);
  const restored = openDatabase(copy);
  expect(await restored.all(sql`PRAGMA integrity_check`)).toEqual([{ integrity_check: 'ok' }]);
  expect((await findUserByAddress(restored, people.keeper.address))?.id).toBe(people.keeper.id);

  for (const event of ['backed-up', 'back-up-downloaded'] as const) {
    const [entry] = await listLogEntries(openPlace(shared), harbour.id, { event }, 1);
    expect(entry).toMatchObject({ actorId: people.keeper.id, details: { file } });
  }
});

test('nothing but a back-up is handed out, whatever the address says', async () => {
  const db = openPlace(shared);
  const keeper = await newSession(db, people.keeper.id);
  await callAction({ origin: originOf(shared), cookie: keeper }, '/upkeep', 'backUpNow', {});
  const link = '20260310T000000Z-0123456789abcdef0123.db';
  rmSync(join(folder, link), { force: true });
  const file = readdirSync(folder).find((name) => name.endsWith('.db')) ?? 'none';
  symlinkSync(join(shared.data, 'faultwright.db'), join(folder, link));

  const found = await rawGet(`/upkeep/back-ups/${file}`, keeper);
  expect(found).toMatchObject({ status: 200, cache: 'no-store', begins: 'SQLite format 3' });
  const addresses = [
    link,
    '../../faultwright.db',
    '..%2Ffaultwright.db',
    '%2e%2e%2f%2e%2e%2ffaultwright.db',
    '..%252Ffaultwright.db',
    '..%5cfaultwright.db',
    `..%2Fback-ups%2F${file}`,
    encodeURIComponent(join(folder, file)),
    `${file}%00`,
    `..%2Ffaultwright.db%00${file}`,
    '%00',
    `${file}%0a`,
    `.%2F${file}`,
    'secret',
  ];
  for (const address of addresses) {
    const answer = await rawGet(`/upkeep/back-ups/${address}`, keeper);
    expect(answer.status, address).toBe(404);
    expect(answer.begins, address).not.toContain('SQLite');
  }
  rmSync(join(folder, link));
  for (const other of [people.administrator, people.learner]) {
    const answer = await rawGet(`/upkeep/back-ups/${file}`, await newSession(db, other.id));
    expect(answer.status, other.name).toBe(404);
  }
});

test('an organisation is added, and its first administrator comes in by the link, once', async ({ page }) => {
  const slug = `hill-${randomBytes(4).toString('hex')}`;
  await addOrganization(page, 'Hill College', slug.toUpperCase());
  const link = await page.getByRole('textbox', { name: /^It is added/ }).inputValue();
  const path = new URL(link).pathname;
  expect(path).toMatch(/^\/invited\/[\w-]{43}$/);
  await addOrganization(page, 'Another', slug);
  await expect(page.getByText('Another organisation has that short name already.')).toBeVisible();

  await page.context().clearCookies({ name: SESSION_COOKIE });
  await page.goto(path);
  await expect(page.getByRole('heading', { name: 'You are invited to Hill College' })).toBeVisible();
  await page.getByLabel('Your name').fill('Fin First');
  await page.getByLabel('E-mail, or a user name').fill('fin');
  await page.getByLabel('Password, or a PIN').fill('hill lights 4711');
  await page.getByRole('button', { name: 'Make my account and join' }).click();
  await page.waitForURL((url) => url.pathname !== path);
  const user = await findUserByAddress(openPlace(shared), `fin@${slug}.invalid`);
  expect(user?.keeper).toBe(false);
  expect(await listMemberships(openPlace(shared), user?.id ?? '')).toMatchObject([{ slug, role: 'administrator' }]);
  await page.goto(path);
  await expect(page.getByRole('heading', { name: 'This link opens nothing' })).toBeVisible();
});

test('a link that was lost is made anew, until somebody has come in', async ({ page }) => {
  const slug = `vale-${randomBytes(4).toString('hex')}`;
  await addOrganization(page, `Vale ${slug}`, slug);
  const first = await page.getByRole('textbox', { name: /^It is added/ }).inputValue();
  await page.reload();
  await page.getByRole('button', { name: `Make a new link for Vale ${slug}` }).click();
  const second = await page.getByRole('textbox', { name: /^Give this link/ }).inputValue();
  await page.goto(new URL(first).pathname);
  await expect(page.getByRole('heading', { name: 'This link opens nothing' })).toBeVisible();
  await signInNew(page, await somebodyNew('learner'));
  await page.goto(new URL(second).pathname);
  await page.getByRole('button', { name: /^Join as Pat/ }).click();
  await page.waitForURL((url) => !url.pathname.startsWith('/invited'));
  await signInAs(page, 'keeper');
  await page.goto('/upkeep');
  await expect(page.getByRole('listitem').filter({ hasText: `Vale ${slug}` })).toContainText('1 person');
  await expect(page.getByRole('button', { name: `Make a new link for Vale ${slug}` })).toBeHidden();
  const made = await findBySlug(openPlace(shared), slug);
  const entries = await listLogEntries(openPlace(shared), made?.id ?? '', {}, 10);
  expect(entries.map(({ event }) => event)).toEqual([
    'invitation-used',
    'invitation-made',
    'invitation-made',
    'organization-added',
  ]);
});

test('an administrator who keeps no installation does not get to its upkeep', async ({ page }) => {
  await signInAs(page, 'administrator');
  expect((await page.request.get('/upkeep')).status()).toBe(404);
});

test('a back-up put back as the page says has everything from before it, and nothing from after', async () => {
  const place = placeFor(3138);
  await freshData(place);
  const caller = { origin: originOf(place), cookie: await newSession(openPlace(place), people.keeper.id) };
  let server = startServer(place, { FAULTWRIGHT_LOG: 'silent' });
  try {
    await untilUp(place);
    await addClassAt(caller, 'before');
    await callAction(caller, '/upkeep', 'backUpNow', {});
    await addClassAt(caller, 'after');
    const gone = once(server, 'exit');
    server.kill('SIGTERM');
    await gone;
    const [file = 'none'] = readdirSync(join(place.data, 'back-ups'));
    for (const ending of ['', '-wal', '-shm']) rmSync(join(place.data, `faultwright.db${ending}`), { force: true });
    cpSync(join(place.data, 'back-ups', file), join(place.data, 'faultwright.db'));

    server = startServer(place, { FAULTWRIGHT_LOG: 'silent' });
    await untilUp(place);
    const names = (await listClasses(openPlace(place), harbour.id, 10)).map(({ name }) => name);
    expect(names).toEqual(['before']);
    await addClassAt(caller, 'afterwards');
    expect(await listClasses(openPlace(place), harbour.id, 10)).toHaveLength(2);
  } finally {
    server.kill('SIGKILL');
  }
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 360, height: 800 } });

  test('upkeep needs no sideways scrolling, not even beside a new link', async ({ page }) => {
    await addOrganization(page, 'W'.repeat(80), `wide-${randomBytes(8).toString('hex')}`);
    await expect(page.getByRole('textbox', { name: /^It is added/ })).toBeVisible();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  });
});

async function addOrganization(page: Page, name: string, slug: string): Promise<void> {
  await page.goto('/upkeep');
  await page.getByLabel('Name of the shop or college').fill(name);
  await page.getByLabel('Short name').fill(slug);
  await page.getByRole('button', { name: 'Add this organisation' }).click();
}

async function addClassAt(caller: { origin: string; cookie: string }, name: string): Promise<void> {
  await callAction(caller, '/classes', 'addClass', { name, key: randomBytes(16).toString('hex') });
}

function originOf({ port }: Place): string {
  return `http://127.0.0.1:${port}`;
}

/** Asks for an address as it stands, which a browser would tidy up first. */
async function rawGet(path: string, cookie: string): Promise<{ status: number; cache: string; begins: string }> {
  const headers = { Cookie: `${SESSION_COOKIE}=${cookie}` };
  const asked = request({ host: '127.0.0.1', port: SHARED_PORT, path, headers }).end();
  const [answer] = (await once(asked, 'response')) as [IncomingMessage];
  const pieces: Buffer[] = [];
  for await (const piece of answer) pieces.push(piece);
  const begins = Buffer.concat(pieces).subarray(0, 15).toString('latin1');
  return { status: answer.statusCode ?? 0, cache: answer.headers['cache-control'] ?? '', begins };
}
