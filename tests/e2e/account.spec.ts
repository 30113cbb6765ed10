import { readFileSync } from 'node:fs';
import type { Db } from '@/db/client';
import { recordAct } from '@/db/queries/acts';
import { recordAttempt } from '@/db/queries/attempts';
import { listLogEntries } from '@/db/queries/log-entries';
import { findMember } from '@/db/queries/members';
import { listSessions } from '@/db/queries/sessions';
import { anAct, anAttempt } from '../support/attempt-rows';
import { newSession, PASSWORD } from '../support/people';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';
import { expect, test } from './fixtures';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';

test.use({ as: null });

let opened: Db | undefined;
/** One connection: statements that run together have to be made for it. */
const db = () => (opened ??= openPlace(placeFor(SHARED_PORT)));

let somebody: Somebody;

test.beforeEach(async ({ page }) => {
  somebody = await somebodyNew('learner');
  await signInNew(page, somebody);
});

test('a person changes their name, and every page knows it at once', async ({ page }) => {
  await page.goto('/me');
  await page.getByLabel('Your name').fill('Pat <b>Quayside</b>');
  await page.getByRole('button', { name: 'Change the name' }).click();
  await expect(page.getByText('Your name is changed.')).toBeVisible();
  await expect(page.getByRole('banner').getByText('Pat <b>Quayside</b>')).toBeVisible();
});

test('whoever gets the present password wrong changes nothing, and loses nothing typed', async ({ page }) => {
  await page.goto('/me');
  await page.getByLabel('Present password or PIN').fill('something else');
  await page.getByLabel('New password or PIN').fill('quiet harbour morning');
  await page.getByRole('button', { name: 'Change it' }).click();
  await expect(page.getByText('The present password or PIN is another one.')).toBeVisible();
  await expect(page.getByLabel('New password or PIN')).toHaveValue('quiet harbour morning');
});

test('a new PIN signs all other devices out, and this one works on in the same organisation', async ({ page }) => {
  await newSession(db(), somebody.id, somebody.organizationId);
  await page.goto('/me');
  await page.getByLabel('Present password or PIN').fill(PASSWORD);
  await page.getByLabel('New password or PIN').fill('123456');
  await page.getByRole('button', { name: 'Change it' }).click();
  await expect(page.getByText('That PIN is among the first')).toBeVisible();
  await page.getByLabel('New password or PIN').fill('582013');
  await page.getByRole('button', { name: 'Change it' }).click();
  await page.waitForURL(/done=secret$/);
  await expect(page.getByText('Your password or PIN is changed')).toBeVisible();
  const sessions = await listSessions(db(), somebody.id, new Date(), 10);
  expect(sessions.map((one) => one.activeOrganizationId)).toEqual([somebody.organizationId]);
  await page.context().clearCookies();
  await page.goto('/sign-in');
  await page.getByLabel('E-mail or user name').fill(somebody.signInName);
  await page.getByLabel(/Password/).fill('582013');
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(page).toHaveURL(/\/learn$/);
});

test('a person sees where they are signed in, and ends one session or all others', async ({ page }) => {
  for (let n = 0; n < 3; n++) await newSession(db(), somebody.id);
  await page.goto('/me');
  const list = page.getByRole('region', { name: 'Where you are signed in' });
  await expect(list.getByRole('listitem')).toHaveCount(4);
  await expect(list.getByText('this one')).toHaveCount(1);
  await list
    .getByRole('button', { name: /^Sign out:/ })
    .first()
    .click();
  await expect(list.getByRole('listitem')).toHaveCount(3);
  await list.getByRole('button', { name: 'Sign out everywhere else' }).click();
  await expect(list.getByRole('listitem')).toHaveCount(1);
  await expect(list.getByText('this one')).toBeVisible();
  const logged = await listLogEntries(db(), somebody.organizationId, { event: 'signed-out-elsewhere' }, 10);
  expect(logged).toHaveLength(2);
});

test('the page of one’s account holds no session’s token', async ({ page }) => {
  const value = await newSession(db(), somebody.id);
  const token = decodeURIComponent(value).split('.')[0] ?? '';
  const held = (await page.context().cookies()).map((cookie) => decodeURIComponent(cookie.value).split('.')[0] ?? '');
  const answer = await (await page.request.get('/me')).text();
  expect(held.length).toBeGreaterThan(0);
  for (const secret of [token, ...held]) expect(answer).not.toContain(secret);
});

test('a person takes everything away, as JSON and as CSV, without what an open case hides', async ({ page }) => {
  const attempt = anAttempt({
    id: `attempt-${somebody.id}`,
    learnerId: somebody.id,
    organizationId: somebody.organizationId,
    difficulty: 1.234,
  });
  await recordAttempt(db(), attempt);
  await recordAct(db(), somebody.id, anAct({ attemptId: attempt.id }));
  await page.goto('/me');
  const texts = [];
  for (const name of ['Everything, as JSON', 'What you did in cases and at questions, as CSV']) {
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('link', { name }).click()]);
    expect(download.suggestedFilename()).toMatch(/^faultwright-data\.(json|csv)$/);
    texts.push(readFileSync(await download.path(), 'utf8'));
  }
  expect(JSON.parse(texts[0] ?? '').account.signInName).toBe(somebody.signInName);
  for (const text of texts) {
    expect(text).toContain('prime-pressure');
    expect(text).not.toMatch(/1\.234|features|severity|truth/);
  }
  const logged = await listLogEntries(db(), somebody.organizationId, { event: 'data-exported' }, 10);
  expect(logged.map(({ personId }) => personId)).toEqual([somebody.id, somebody.id]);
});

test('an export is kept by no cache, and another format is not there', async ({ page }) => {
  const answer = await page.request.get('/me/export/csv');
  expect(answer.headers()['cache-control']).toBe('no-store');
  expect(answer.headers()['content-disposition']).toBe('attachment; filename="faultwright-data.csv"');
  expect((await page.request.get('/me/export/toString')).status()).toBe(404);
});

test('a person asks to be erased and takes it back', async ({ page }) => {
  const asked = async () => (await findMember(db(), somebody.organizationId, somebody.id))?.erasureAskedAt ?? null;
  await page.goto('/me');
  await page.getByRole('button', { name: 'Ask to be erased' }).click();
  await expect(page.getByText('Nothing has been erased yet.')).toBeVisible();
  expect(await asked()).not.toBeNull();
  await page.getByRole('button', { name: 'Take the request back' }).click();
  await expect(page.getByRole('button', { name: 'Ask to be erased' })).toBeVisible();
  expect(await asked()).toBeNull();
  const logged = await listLogEntries(db(), somebody.organizationId, { event: 'erasure-asked' }, 10);
  expect(logged.map(({ details }) => details.takenBack)).toEqual([true, false]);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 800 } });

  test('the page of one’s account needs no sideways scrolling', async ({ page }) => {
    for (let n = 0; n < 2; n++) await newSession(db(), somebody.id);
    await page.goto('/me');
    await expect(page.getByRole('heading', { name: 'Your account' })).toBeVisible();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  });
});
