import type { Db } from '@/db/client';
import { recordAttempt } from '@/db/queries/attempts';
import { recordCall } from '@/db/queries/calls';
import { listLogEntries } from '@/db/queries/log-entries';
import { findOrganization } from '@/db/queries/organizations';
import { aGrade, aNewCall, anAttempt } from '../support/attempt-rows';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';
import { expect, test } from './fixtures';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';

test.use({ as: null });

let opened: Db | undefined;
/** One connection: statements that run together have to be made for it. */
const db = () => (opened ??= openPlace(placeFor(SHARED_PORT)));

let administrator: Somebody;

test.beforeEach(async ({ page }) => {
  administrator = await somebodyNew('administrator');
  await signInNew(page, administrator);
});

test('an administrator’s settings count for every page and stand in the log field by field', async ({ page }) => {
  await page.goto('/settings');
  await page.getByLabel('Name of the organisation').fill('Quay & Sons');
  await page.getByLabel('Units', { exact: true }).last().selectOption('bar-c');
  await page.getByLabel('Dates').selectOption('5 Mar 2026');
  await page.getByLabel('Time zone').selectOption('America/Denver');
  await page.getByRole('button', { name: 'Store the settings' }).click();
  await expect(page.getByText('The settings are stored.')).toBeVisible();
  await expect(page.getByRole('banner').getByText('Quay & Sons')).toBeVisible();
  await expect(page.getByText(/It is now \d{1,2} \w{3} \d{4}, \d\d:\d\d by these settings/)).toBeVisible();
  const [entry] = await listLogEntries(db(), administrator.organizationId, { event: 'settings-changed' }, 10);
  expect(entry?.details).toEqual({ changed: ['name', 'units', 'dateFormat', 'timeZone'] });
  expect(JSON.stringify(entry)).not.toContain('Sons');
});

test('what will not do is told in a sentence, and nothing that was typed is lost', async ({ page }) => {
  await page.goto('/settings');
  await page.getByLabel('Name of the organisation').fill('Quay & Sons');
  await page.getByLabel('Pass mark in practice').fill('a lot');
  await page.getByRole('button', { name: 'Store the settings' }).click();
  await expect(page.getByText('The pass mark in practice is a whole number from 0 to 100.')).toBeVisible();
  await expect(page.getByLabel('Name of the organisation')).toHaveValue('Quay & Sons');
  await expect(page.getByLabel('Pass mark in practice')).toHaveValue('a lot');
  expect((await findOrganization(db(), administrator.organizationId))?.settings).toBeNull();
  await page.getByLabel('Pass mark in practice').fill('70');
  await page.getByLabel('Days until evidence counts half').fill('6');
  await page.getByRole('button', { name: 'Store the settings' }).click();
  await expect(page.getByText('a whole number from 7 to 3650')).toBeVisible();
});

test('storing settings that nobody changed leaves no trace in the log', async ({ page }) => {
  await page.goto('/settings');
  await page.getByRole('button', { name: 'Store the settings' }).click();
  await expect(page.getByText('The settings are stored.')).toBeVisible();
  expect(await listLogEntries(db(), administrator.organizationId, { event: 'settings-changed' }, 10)).toEqual([]);
});

test('the pass mark in practice says which cases of the learner’s list are passed', async ({ page }) => {
  const { id, organizationId } = administrator;
  for (const [n, total] of [59, 60].entries()) {
    const attemptId = `pass-${n}-${id}`;
    await recordAttempt(db(), anAttempt({ id: attemptId, key: attemptId, learnerId: id, organizationId }));
    const grade = { ...aGrade, total };
    await recordCall(db(), id, aNewCall({ attemptId, key: `call-${attemptId}`, grade }));
  }
  await page.goto('/learn');
  const row = (n: number) => page.getByRole('row').filter({ has: page.locator(`a[href*="pass-${n}-"]`) });
  await expect(row(0)).toContainText('not yet passed, 59 of 100; it takes 60');
  await expect(row(1)).toContainText('passed, 60 of 100');
  await page.goto('/settings');
  await page.getByLabel('Pass mark in practice').fill('59');
  await page.getByRole('button', { name: 'Store the settings' }).click();
  await expect(page.getByText('The settings are stored.')).toBeVisible();
  await page.goto('/learn');
  await expect(row(0)).not.toContainText('not yet');
});

test('an instructor does not get to the settings', async ({ page }) => {
  await signInNew(page, await somebodyNew('instructor'));
  expect((await page.request.get('/settings')).status()).toBe(404);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 800 } });

  test('the settings need no sideways scrolling', async ({ page }) => {
    await page.goto('/settings');
    await expect(page.getByRole('button', { name: 'Store the settings' })).toBeVisible();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  });
});
