import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { codeOf } from '../support/case-codes';
import { expect, test } from './fixtures';
import {
  fillFinding,
  makeCall,
  openAttempt,
  primePressureLow,
  takeReading,
  weakLiftPump,
  writeFinding,
} from './learner';

const code = codeOf('lift-pump-weak', 800);

test('axe finds nothing serious on the start page, the list and a fresh case', async ({ page }) => {
  await page.goto('/');
  await expectClean(page);
  await page.goto('/learn');
  await expectClean(page);
  await openAttempt(page, code);
  await expectClean(page);
});

test('axe finds nothing serious beside a gauge and on a finding half written', async ({ page }) => {
  await openAttempt(page, code);
  await takeReading(page, primePressureLow.hookUp);
  await fillFinding(page, primePressureLow.finding);
  await expectClean(page);
});

test('axe finds nothing serious beside a destroyed gauge and in a debrief', async ({ page }) => {
  await openAttempt(page, code);
  await takeReading(page, primePressureLow.hookUp);
  await writeFinding(page, primePressureLow.finding);
  await takeReading(page, { ...primePressureLow.hookUp, condition: 'idle' });
  await expectClean(page);
  await makeCall(page, weakLiftPump);
  await expectClean(page);
});

/** In both themes; the dark one differs in nothing but its colours. */
async function expectClean(page: Page): Promise<void> {
  await page.emulateMedia({ colorScheme: 'light' });
  expect(await grave(new AxeBuilder({ page }))).toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await grave(new AxeBuilder({ page }).withRules(['color-contrast']))).toEqual([]);
}

async function grave(axe: AxeBuilder): Promise<string[]> {
  const { violations } = await axe.analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
}
