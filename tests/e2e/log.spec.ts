import Papa from 'papaparse';
import type { Db } from '@/db/client';
import { addingLogEntry, listLogEntries, type NewLogEntry } from '@/db/queries/log-entries';
import { together } from '@/db/together';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';
import { expect, test } from './fixtures';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';

test.use({ as: null });

let opened: Db | undefined;
/** One connection: statements that run together have to be made for it. */
const db = () => (opened ??= openPlace(placeFor(SHARED_PORT)));

let administrator: Somebody;
let learner: Somebody;

test.beforeEach(async ({ page }) => {
  administrator = await somebodyNew('administrator');
  learner = await somebodyNew('learner', administrator.organizationId);
  await signInNew(page, administrator);
});

async function log(...entries: Partial<NewLogEntry>[]): Promise<void> {
  const { organizationId, id: actorId } = administrator;
  await together(
    db(),
    entries.map((entry) =>
      addingLogEntry(db(), {
        at: new Date(Date.UTC(2026, 2, 5, 12)),
        organizationId,
        actorId,
        event: 'pin-set',
        ...entry,
      }),
    ),
  );
}

test('the log says in sentences who did what to whom, newest first', async ({ page }) => {
  await log(
    { personId: learner.id },
    { event: 'person-erased', personId: 'somebody-gone' },
    { event: 'roles-set', actorId: null, personId: learner.id, details: { roles: ['learner', 'shop-lead'] } },
  );
  await page.goto('/log');
  const rows = page.getByRole('row');
  await expect(rows.nth(1)).toContainText(`The console set what ${learner.name} is here.`);
  await expect(rows.nth(1)).toContainText('roles: learner, shop lead');
  await expect(rows.nth(2)).toContainText(`${administrator.name} erased erased person.`);
  await expect(rows.nth(3)).toContainText(`${administrator.name} set a new PIN for ${learner.name}.`);
});

test('the log is asked for some of it, and the address keeps what was asked', async ({ page }) => {
  await log({ personId: learner.id }, { event: 'class-added' }, { at: new Date(Date.UTC(2026, 2, 6, 12)) });
  await page.goto('/log');
  await page.getByRole('combobox', { name: 'What happened' }).selectOption('PIN set');
  await page.getByLabel('To this day').fill('2026-03-05');
  await page.getByRole('button', { name: 'Show these' }).click();
  await expect(page).toHaveURL(/event=pin-set/);
  await expect(page.getByRole('row')).toHaveCount(2);
  await expect(page.getByLabel('To this day')).toHaveValue('2026-03-05');
  await page.getByRole('link', { name: 'Show everything' }).click();
  await expect(page.getByRole('row')).toHaveCount(4);
});

test('what the address asks wrongly is named and left out', async ({ page }) => {
  await log({});
  await page.goto('/log?event=nonsense&from=2026-02-30&before=x&person=%3Cb%3E&actor=a&actor=b');
  await expect(page.getByText('Could not be used and was left out:')).toContainText('From this day');
  await expect(page.getByRole('row')).toHaveCount(2);
});

test('a log longer than a page goes on', async ({ page }) => {
  await log(...Array.from({ length: 130 }, () => ({})));
  await page.goto('/log');
  await expect(page.getByRole('row')).toHaveCount(101);
  await page.getByRole('link', { name: 'Older' }).click();
  await expect(page.getByRole('row')).toHaveCount(31);
  await page.getByRole('link', { name: 'Newest' }).click();
  await expect(page.getByRole('row')).toHaveCount(101);
});

test('the log is taken away as CSV, every page of what was asked, and that is logged', async ({ page }) => {
  await log(...Array.from({ length: 130 }, () => ({ personId: learner.id })), { event: 'class-added' });
  const answer = await page.request.get('/log/export?event=pin-set');
  expect(answer.headers()['cache-control']).toBe('no-store');
  const rows = Papa.parse<string[]>(await answer.text(), { skipEmptyLines: true }).data;
  expect(rows).toHaveLength(131);
  expect(rows[1]?.[2]).toBe(`${administrator.name} set a new PIN for ${learner.name}.`);
  const [entry] = await listLogEntries(db(), administrator.organizationId, { event: 'log-exported' }, 1);
  expect(entry).toMatchObject({ actorId: administrator.id, details: { event: 'pin-set' } });
});

test('another organisation’s log is not in it', async ({ page }) => {
  const other = await somebodyNew('administrator');
  await log({ organizationId: other.organizationId, actorId: other.id }, {});
  await page.goto(`/log?actor=${other.id}`);
  await expect(page.getByText('The log says nothing of the kind.')).toBeVisible();
  expect(await (await page.request.get('/log/export')).text()).not.toContain(other.id);
});

test('an instructor does not get to the log', async ({ page }) => {
  await signInNew(page, await somebodyNew('instructor'));
  expect((await page.request.get('/log')).status()).toBe(404);
  expect((await page.request.get('/log/export')).status()).toBe(404);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 800 } });

  test('entries of the log become cards that need no sideways scrolling', async ({ page }) => {
    await log({ personId: learner.id, details: { sessionId: 'x'.repeat(60) } });
    await page.goto('/log');
    await expect(page.getByText(`${administrator.name} set a new PIN`)).toBeVisible();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  });
});
