import { codeOf } from '../support/case-codes';
import { expect, test } from './fixtures';
import {
  makeCall,
  openAttempt,
  primePressureLow,
  startByCode,
  takeReading,
  weakLiftPump,
  writeFinding,
} from './learner';

test('a learner finishes a case by mouse, from the start page to the debrief', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('link', { name: 'Practise a case' }).click();
  const id = await startByCode(page, codeOf('lift-pump-weak', 800));
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Cranks long before it starts');

  await page.getByRole('link', { name: 'Port F1' }).click();
  await takeReading(page, primePressureLow.hookUp);
  await expect(page.getByText('12 min', { exact: true }).first()).toBeVisible();
  await writeFinding(page, primePressureLow.finding);
  await expect(page.getByRole('region', { name: 'Findings' })).toContainText('below the limit: at least 70 kPa');

  await page.getByRole('link', { name: 'Port S1' }).click();
  await takeReading(page, { check: /Air in the fuel/, condition: 'key on, engine not turning' });
  await writeFinding(page, {
    verdict: 'Pass',
    comparison: 'within',
    limit: 'free-gas-key-on',
    clears: ['supply side'],
    suspects: ['priming'],
  });

  await makeCall(page, weakLiftPump);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Weak lift pump. You found it.');
  await expect(page.getByRole('heading', { level: 1 })).toBeInViewport();
  await expect(page.getByRole('region', { name: 'Marks' })).toContainText('30 / 30');
  await expect(page.getByRole('region', { name: 'Your findings' })).toContainText('Right: Fail.');
  await expect(page.getByRole('region', { name: 'After the repair' })).toContainText('Prime pressure, key on');

  await page.getByRole('link', { name: 'Practise' }).click();
  await expect(page.getByRole('row').filter({ has: page.locator(`a[href*="${id}"]`) })).toContainText('of 100');
});

test('a random case starts with one press and shows what the shop knows', async ({ page }) => {
  await page.goto('/learn');
  await page.getByRole('button', { name: 'Start a random case' }).click();
  await page.waitForURL(/\/learn\/cases\/[0-9a-f]{20}$/);
  await expect(page.getByRole('region', { name: 'Fuel system' })).toBeVisible();
  await expect(page.getByText(/^“.+”$/)).toBeVisible();
});

test('a gauge that sees too much is lost, is said to be, and caps the grade', async ({ page }) => {
  await openAttempt(page, codeOf('lift-pump-weak', 800));
  await takeReading(page, { ...primePressureLow.hookUp, condition: 'idle' });
  await expect(page.getByRole('heading', { name: 'The gauge is destroyed' })).toBeVisible();
  await expect(page.getByRole('img', { name: /destroyed/ })).toBeVisible();
  await expect(page.getByRole('option', { name: /0–30 psi.*destroyed/ })).toBeDisabled();
  await makeCall(page, weakLiftPump);
  await expect(page.getByRole('region', { name: 'Safety first' })).toContainText('was destroyed');
});

test('a learner chooses the system and the level of a random case', async ({ page }) => {
  await page.goto('/learn');
  await page.getByLabel('System').selectOption('tern-13');
  await page.getByRole('combobox', { name: 'Level', exact: true }).selectOption('hardest');
  await page.getByRole('button', { name: 'Start a random case' }).click();
  await page.waitForURL(/\/learn\/cases\/[0-9a-f]{20}$/);
  await expect(page.getByText(/^Tern 13 · /)).toBeVisible();
});

test('a learner chooses units and theme, and both are remembered', async ({ page }) => {
  await openAttempt(page, codeOf('lift-pump-weak', 800));
  await page.getByLabel('Units').selectOption('psi-f');
  await expect(page.getByRole('definition').first()).toContainText('°F');
  await page.getByLabel('Light or dark').selectOption('dark');
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  await page.reload();
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  await expect(page.getByRole('definition').first()).toContainText('°F');
});
