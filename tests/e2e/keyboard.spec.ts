import type { Locator, Page } from '@playwright/test';
import { codeOf } from '../support/case-codes';
import { expect, test } from './fixtures';
import { findings, readScale, weakLiftPump } from './learner';
import { tabTo } from './tabbing';

test('a learner finishes a case with the keyboard alone', async ({ page }) => {
  await page.goto('/learn');
  await tabTo(page, page.getByLabel('Case code'));
  await page.keyboard.type(codeOf('lift-pump-weak', 800).toLowerCase().replaceAll('-', ' '));
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/learn\/cases\/[0-9a-f]{20}$/);

  await tabTo(page, page.getByRole('link', { name: 'Port F1, main-filter inlet' }));
  await page.keyboard.press('Enter');
  await expect(page.getByText('checks at port F1')).toBeVisible();
  await tabTo(page, page.getByRole('link', { name: /Prime pressure/ }));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Prime pressure' })).toBeFocused();

  await choose(page, page.getByLabel('Instrument'), 'dial-0-30-psi');
  await choose(page, page.getByLabel('Condition'), 'key-on');
  await tabTo(page, page.getByRole('button', { name: 'Take the reading' }));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'What it shows' })).toBeFocused();

  await tabTo(page, page.getByLabel('What does it read?'));
  await page.keyboard.type(String(await readScale(page)));
  await tabTo(page, page.getByRole('radio', { name: 'Pass' }));
  await page.keyboard.press('ArrowRight');
  await expect(page.getByRole('radio', { name: 'Fail' })).toBeChecked();
  await choose(page, page.getByLabel('Because it is'), 'below');
  await choose(page, page.getByLabel('the limit for'), 'prime-pressure-key-on');
  await tabTo(page, page.getByRole('group', { name: 'Still suspect' }).getByLabel('priming'));
  await page.keyboard.press('Space');
  await tabTo(page, page.getByRole('button', { name: 'Write it down' }));
  await page.keyboard.press('Enter');
  await expect(findings(page)).toHaveCount(1);
  await expect(page.getByRole('heading', { name: 'What it shows' })).toBeFocused();

  await choose(page, page.getByLabel('What is wrong?'), 'lift-pump-weak');
  await choose(page, page.getByLabel('What do you do about it?'), 'replace-lift-pump');
  await choose(page, page.getByLabel('Which check will prove it?'), 'prime-pressure|key-on');
  await tabTo(page, page.getByRole('button', { name: 'Make the call' }));
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/debrief$/);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(`${weakLiftPump.cause}. You found it.`);
});

test('focus is always to be seen', async ({ page }) => {
  await page.goto('/learn');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('link', { name: 'Skip to the page' })).toBeInViewport();
  await tabTo(page, page.getByRole('button', { name: 'Start a random case' }));
  const outline = await page.evaluate(() => getComputedStyle(document.activeElement ?? document.body).outlineWidth);
  expect(outline).toBe('3px');
});

/** Moves through a drop-down with the arrow key until it holds the value. */
async function choose(page: Page, select: Locator, value: string): Promise<void> {
  await tabTo(page, select);
  for (let presses = 0; presses < 200; presses++) {
    if ((await select.inputValue()) === value) return;
    await page.keyboard.press('ArrowDown');
  }
  throw new Error(`No option ${value} in ${select}`);
}
