import type { Locator, Page } from '@playwright/test';
import { listActs } from '@/db/queries/acts';
import { recordAttempt } from '@/db/queries/attempts';
import { anAttempt } from '../support/attempt-rows';
import { codeOf } from '../support/case-codes';
import { harbour, people } from '../support/people';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { askForHint, makeCall, openAttempt, primePressureLow, takeReading, weakLiftPump } from './learner';

const code = codeOf('lift-pump-weak', 800);
const coached = { coached: true };

test('a coached learner asks for a hint with the keyboard, follows it, and it stays on the job card', async ({
  page,
}) => {
  const id = await openAttempt(page, code, coached);
  const panel = page.getByRole('region', { name: 'What would tell most now?' });
  await tabTo(page, panel.getByRole('button', { name: 'Give me a hint' }));
  await page.keyboard.press('Enter');
  await expect(panel.getByText(/expected to settle about \d+% of what is still open about the repair/)).toBeVisible();
  await expect(panel.getByText('1 hint so far')).toBeVisible();
  await expect(page.getByRole('heading', { name: 'What would tell most now?' })).toBeFocused();

  const hinted = (await panel.getByRole('heading', { level: 3 }).textContent()) ?? '';
  await tabTo(page, panel.getByRole('link', { name: 'Hook it up' }));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: hinted.split(', ')[0] ?? '', exact: true })).toBeFocused();
  await expect(page.getByRole('region', { name: 'Findings' })).toContainText(hinted);
  const acts = await listActs(openPlace(placeFor(SHARED_PORT)), people.learner.id, id);
  expect(acts.map(({ kind }) => kind)).toEqual(['hint']);
});

test('a hint stands until something is read; then another may be asked for', async ({ page }) => {
  const id = await openAttempt(page, code, coached);
  await askForHint(page);
  await page.reload();
  await expect(page.getByRole('button', { name: 'Give me a hint' })).toHaveCount(0);
  await takeReading(page, primePressureLow.hookUp);
  await expect(page.getByRole('heading', { name: 'What it shows' })).toBeFocused();
  await askForHint(page);
  const acts = await listActs(openPlace(placeFor(SHARED_PORT)), people.learner.id, id);
  expect(acts.map(({ kind }) => kind)).toEqual(['hint', 'reading', 'hint']);
});

test('two presses at once make one hint', async ({ page }) => {
  const id = await openAttempt(page, code, coached);
  await page.getByRole('button', { name: 'Give me a hint' }).dblclick();
  await expect(page.getByRole('link', { name: 'Hook it up' })).toBeVisible();
  expect(await listActs(openPlace(placeFor(SHARED_PORT)), people.learner.id, id)).toHaveLength(1);
});

test('a case that was coached is called and graded', async ({ page }) => {
  await openAttempt(page, code, coached);
  await askForHint(page);
  await takeReading(page, primePressureLow.hookUp);
  await makeCall(page, weakLiftPump);
  await expect(page.getByRole('heading', { level: 1 })).toContainText('You found it');
});

test('who is not coached is offered no hint', async ({ page }) => {
  await openAttempt(page, code);
  await expect(page.getByRole('region', { name: 'Findings' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Give me a hint' })).toHaveCount(0);
});

test('an attempt that is not coached, somebody else’s and none at all give the same answer and no hint', async ({
  page,
}) => {
  const db = openPlace(placeFor(SHARED_PORT));
  const theirs = '0c0ac4ed0000000000aa';
  await recordAttempt(
    db,
    anAttempt({
      id: theirs,
      key: theirs,
      learnerId: people.secondLearner.id,
      organizationId: harbour.id,
      caseCode: code,
      coached: true,
    }),
  );
  const plain = await openAttempt(page, code);
  for (const id of [plain, theirs, '00000000000000000000']) {
    await openAttempt(page, code, coached);
    await askFor(page, id);
    await expect(page.getByText('There is no such thing here, or it is not yours.')).toBeVisible();
  }
  expect(await listActs(db, people.learner.id, plain)).toEqual([]);
  expect(await listActs(db, people.secondLearner.id, theirs)).toEqual([]);
});

test('after the call, and under other content, no hint is given', async ({ page, context }) => {
  const db = openPlace(placeFor(SHARED_PORT));
  const called = await openAttempt(page, code, coached);
  const other = await context.newPage();
  await other.goto(`/learn/cases/${called}`);
  await makeCall(other, weakLiftPump);
  await page.getByRole('button', { name: 'Give me a hint' }).click();
  await expect(page.getByText('The call is already made')).toBeVisible();
  expect(await listActs(db, people.learner.id, called)).toEqual([]);

  const old = '0c0ac4ed0000000000bb';
  await recordAttempt(
    db,
    anAttempt({
      id: old,
      key: old,
      learnerId: people.learner.id,
      organizationId: harbour.id,
      caseCode: code,
      coached: true,
    }),
  );
  await openAttempt(page, code, coached);
  await askFor(page, old);
  await expect(page.getByText('started under another version of the content')).toBeVisible();
  expect(await listActs(db, people.learner.id, old)).toEqual([]);
});

test('axe finds nothing serious beside a hint, and it fits a phone', async ({ page }) => {
  await openAttempt(page, code, coached);
  await askForHint(page);
  await expectClean(page);
  await page.setViewportSize({ width: 360, height: 740 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
});

/** Asks in the name of another attempt than the page's own. */
async function askFor(page: Page, attemptId: string): Promise<void> {
  const ask = page.getByRole('button', { name: 'Give me a hint' });
  await ask.evaluate((button, id) => {
    const field = (button as HTMLButtonElement).form?.elements.namedItem('attemptId');
    if (field instanceof HTMLInputElement) field.value = id;
  }, attemptId);
  await ask.click();
}

/** Presses Tab until it has the focus, as far as twice round the page. */
async function tabTo(page: Page, target: Locator): Promise<void> {
  for (let presses = 0; presses < 500; presses++) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never reaches ${target}`);
}
