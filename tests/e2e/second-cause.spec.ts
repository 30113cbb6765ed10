import type { Page } from '@playwright/test';
import { expect, test } from './fixtures';
import { codeOfTwo, openAttempt } from './learner';

const code = codeOfTwo(
  { cause: 'main-filter-plugged', severity: 800 },
  { cause: 'relief-valve-leaking', severity: 700 },
);

test('a learner calls two causes, is told what a second one lacks, and loses nothing by it', async ({ page }) => {
  await openAttempt(page, code);
  await choose(page, {
    cause: 'main-filter-plugged',
    repair: 'replace-main-filter',
    proof: 'main-filter-drop|full-load',
  });
  await page.getByText('I think there are two causes').click();
  const call = page.getByRole('button', { name: 'Make the call' });

  await choose(page, { alsoCause: 'relief-valve-leaking' });
  await call.click();
  await expect(page.getByText('choose also: repair of the second cause, check that proves')).toBeVisible();
  await expect(field(page, 'alsoCause')).toHaveValue('relief-valve-leaking');
  await expect(field(page, 'cause')).toHaveValue('main-filter-plugged');

  await choose(page, {
    alsoCause: 'main-filter-plugged',
    alsoRepair: 'replace-relief-valve',
    alsoProof: 'relief-valve-leak|cranking',
  });
  await call.click();
  await expect(page.getByText('Both causes are the same one')).toBeVisible();

  await choose(page, { alsoCause: 'relief-valve-leaking' });
  await call.click();
  await page.waitForURL(/\/debrief$/);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(
    'Main filter plugged, and Rail relief valve leaking. You found both.',
  );
  const truth = page.getByRole('region', { name: 'What it was' });
  await expect(truth).toContainText('Severity 80 %');
  await expect(truth).toContainText('Severity 70 %');
  await expect(truth).toContainText('Replace the rail relief valve');
  await expect(page.getByRole('region', { name: 'Marks' })).toContainText('each counts half');
});

test('one of two causes found is said to be one of two', async ({ page }) => {
  await openAttempt(page, code);
  await choose(page, {
    cause: 'relief-valve-leaking',
    repair: 'replace-relief-valve',
    proof: 'relief-valve-leak|cranking',
  });
  await page.getByRole('button', { name: 'Make the call' }).click();
  await page.waitForURL(/\/debrief$/);
  await expect(page.getByRole('heading', { level: 1 })).toContainText('You found one of the two.');
});

function field(page: Page, name: string) {
  return page.locator(`select[name="${name}"]`);
}

async function choose(page: Page, values: Record<string, string>): Promise<void> {
  for (const [name, value] of Object.entries(values)) await field(page, name).selectOption(value);
}
