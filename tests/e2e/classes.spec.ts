import type { Page } from '@playwright/test';
import { listClasses, listClassPeople } from '@/db/queries/classes';
import { listLogEntries } from '@/db/queries/log-entries';
import { callAction } from '../support/call-action';
import { newSession } from '../support/people';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';
import { expect, test } from './fixtures';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';

test.use({ as: null });

const origin = `http://127.0.0.1:${SHARED_PORT}`;
const db = () => openPlace(placeFor(SHARED_PORT));
const KEY = '0123456789abcdef0123456789abcdef';

let instructor: Somebody;

test.beforeEach(async ({ page }) => {
  instructor = await somebodyNew('instructor');
  await signInNew(page, instructor);
});

async function addClass(page: Page, name: string): Promise<string> {
  await page.goto('/classes');
  await page.getByLabel('Name of the class').fill(name);
  await page.getByRole('button', { name: 'Add this class' }).click();
  await page.waitForURL(/\/classes\/\w+$/);
  await expect(page.getByRole('heading', { level: 1, name })).toBeVisible();
  return new URL(page.url()).pathname;
}

async function makeCode(page: Page, button = 'Make a code'): Promise<string> {
  const before = await shownCode(page);
  await page.getByRole('button', { name: button }).click();
  await expect.poll(async () => (await shownCode(page)) !== before).toBe(true);
  return (await shownCode(page)) ?? '';
}

/** The code as it stands in the sentence that says what to do with it. */
async function shownCode(page: Page): Promise<string | undefined> {
  const text = (await page.getByRole('main').textContent()) ?? '';
  return /\/join and type ([0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4})\./.exec(text)?.[1];
}

async function logged(): Promise<string[]> {
  const entries = await listLogEntries(db(), instructor.organizationId, {}, 20);
  return entries.map(({ event }) => event);
}

test('an instructor’s class is joined by its code, typed carelessly, and left again', async ({ page }) => {
  const path = await addClass(page, 'Monday <b>evening</b>');
  const code = await makeCode(page);
  await expect(page.getByText(code, { exact: true })).toBeVisible();

  await signInNew(page, await somebodyNew('learner'));
  await page.goto('/join');
  await page.getByLabel('Class code').fill(` ${code.toLowerCase().replace('-', ' ').replace(/0/g, 'o')} `);
  await page.getByRole('button', { name: 'Go on' }).click();
  await page.getByRole('button', { name: /^Join as Pat/ }).click();
  await page.waitForURL((url) => url.pathname !== '/join');

  await signInNew(page, instructor);
  await page.goto('/classes');
  await expect(page.getByRole('listitem').filter({ hasText: 'Monday <b>evening</b>' })).toContainText('1 person');
  await page.goto(path);
  await expect(page.getByRole('main').getByRole('link', { name: /^Pat/ })).toHaveAttribute('href', /^\/people\/\w+$/);
  await page.getByRole('button', { name: /^Take Pat .* out$/ }).click();
  await expect(page.getByText('Nobody has a place yet.')).toBeVisible();
  expect(await logged()).toEqual(['class-place-taken', 'class-joined', 'join-code-made', 'class-added']);
});

test('a new code takes the place of the old one, and a closed or archived class lets nobody in', async ({ page }) => {
  const path = await addClass(page, 'Tuesday');
  const first = await makeCode(page);
  const second = await makeCode(page, 'Make a new code in its place');
  await expectOpen(page, first, false);
  await expectOpen(page, second, true);

  await page.goto(path);
  await page.getByRole('button', { name: 'Close joining' }).click();
  await expect(page.getByText('Nobody can join by themselves.')).toBeVisible();
  await expectOpen(page, second, false);

  await page.goto(path);
  const third = await makeCode(page);
  await page.getByRole('button', { name: 'Put it away' }).click();
  await expect(page.getByText('This class is put away')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Make a code' })).toBeHidden();
  await expectOpen(page, third, false);
  await page.goto('/classes');
  await expect(page.getByRole('listitem').filter({ hasText: 'Tuesday' })).toContainText('put away');

  await page.goto(path);
  await page.getByRole('button', { name: 'Take it out again' }).click();
  await expect(page.getByText('Nobody can join by themselves.')).toBeVisible();
  await expectOpen(page, third, false);
});

async function expectOpen(page: Page, code: string, open: boolean): Promise<void> {
  await page.goto(`/join?code=${code}`);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(open ? /^Join Tuesday at / : 'Join a class');
}

test('an instructor gives places to learners of the organisation, and renames the class', async ({ page }) => {
  const learner = await somebodyNew('learner', instructor.organizationId);
  const stranger = await somebodyNew('learner');
  await addClass(page, 'Wednesday');
  const offered = page.getByLabel('Learner to give a place to');
  await expect(offered.getByRole('option', { name: learner.name })).toBeAttached();
  await expect(offered.getByRole('option', { name: stranger.name })).not.toBeAttached();
  await expect(offered.getByRole('option', { name: instructor.name })).not.toBeAttached();
  await offered.selectOption(learner.id);
  await page.getByRole('button', { name: 'Give a place' }).click();
  await expect(page.getByRole('heading', { name: '1 person in this class' })).toBeVisible();
  await expect(page.getByText('Every learner of the organisation has a place in this class.')).toBeVisible();
  await page.getByLabel('Name of the class').fill('Thursday');
  await page.getByRole('button', { name: 'Rename it' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Thursday' })).toBeVisible();
  expect(JSON.stringify(await listLogEntries(db(), instructor.organizationId, {}, 20))).not.toContain('day');
});

test('a class sent twice is added once, and nobody gets a place who does not learn here', async () => {
  const cookie = await newSession(db(), instructor.id, instructor.organizationId);
  const caller = { origin, cookie };
  await callAction(caller, '/classes', 'addClass', { name: 'Friday', key: KEY });
  await callAction(caller, '/classes', 'addClass', { name: 'Friday', key: KEY });
  const [made, ...others] = await listClasses(db(), instructor.organizationId, 10);
  expect(others).toEqual([]);
  const classId = made?.id ?? '';
  const path = `/classes/${classId}`;
  for (const personId of [(await somebodyNew('learner')).id, instructor.id, 'nobody']) {
    const { text } = await callAction(caller, path, 'giveClassPlace', { classId, personId });
    expect(text, personId).toContain('There is no such thing here, or it is not yours.');
    await callAction(caller, path, 'takeClassPlace', { classId, personId });
  }
  for (let presses = 0; presses < 2; presses++)
    await callAction(caller, path, 'archiveClass', { classId, put: 'away' });
  const members = { id: classId, organizationId: instructor.organizationId };
  expect(await listClassPeople(db(), members, 10)).toEqual([]);
  expect(await logged()).toEqual(['class-archived', 'class-added']);
});

test('a shop lead sees a class without its code; a learner and another organisation see none', async ({ page }) => {
  const path = await addClass(page, 'Saturday');
  const code = await makeCode(page);
  await signInNew(page, await somebodyNew('shop-lead', instructor.organizationId));
  await page.goto(path);
  await expect(page.getByRole('heading', { level: 1, name: 'Saturday' })).toBeVisible();
  await expect(page.getByRole('main').getByRole('button')).toHaveCount(0);
  expect(await page.content()).not.toContain(code);
  for (const other of [await somebodyNew('learner', instructor.organizationId), await somebodyNew('administrator')]) {
    await signInNew(page, other);
    expect((await page.request.get(path)).status()).toBe(404);
  }
});

test('in print, the code stands large on a sheet with nothing but what to do with it', async ({ page }) => {
  await addClass(page, 'Sunday');
  const code = await makeCode(page);
  await page.emulateMedia({ media: 'print' });
  const large = page.getByText(code, { exact: true });
  await expect(large).toBeVisible();
  const size = await large.evaluate((element) => Number.parseFloat(getComputedStyle(element).fontSize));
  expect(size).toBeGreaterThan(80);
  await expect(page.getByText(`and type ${code}.`)).toBeVisible();
  await expect(page.getByRole('main').getByRole('button')).toHaveCount(0);
  await expect(page.getByText('do not put it on the internet')).toBeHidden();
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 360, height: 800 } });

  test('a class with a long name needs no sideways scrolling', async ({ page }) => {
    await addClass(page, 'W'.repeat(80));
    await makeCode(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    await page.goto('/classes');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  });
});
