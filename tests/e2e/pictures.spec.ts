import { statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
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

/** The README shows these. Small enough for a repository. */
const MOST_BYTES = 150_000;
const code = codeOf('lift-pump-weak', 800);

test.use({ deviceScaleFactor: 0.75 });

test('the pictures of the README are taken from a case that somebody works', async ({ page }) => {
  await openAttempt(page, code);
  await picture(page, 'workspace');
  await takeReading(page, primePressureLow.hookUp);
  await fillFinding(page, primePressureLow.finding);
  await page.getByRole('region', { name: 'What it shows' }).scrollIntoViewIfNeeded();
  await picture(page, 'reading');
  await writeFinding(page, primePressureLow.finding);
  await takeReading(page, { check: /Air in the fuel/, condition: 'key on, engine not turning' });
  await writeFinding(page, {
    verdict: 'Pass',
    comparison: 'within',
    limit: 'free-gas-key-on',
    clears: ['supply side'],
    suspects: ['priming'],
  });
  await makeCall(page, weakLiftPump);
  await picture(page, 'debrief');
});

test('and one on a phone in the dark', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.emulateMedia({ colorScheme: 'dark' });
  await openAttempt(page, code);
  await takeReading(page, primePressureLow.hookUp);
  await picture(page, 'phone');
});

async function picture(page: Page, name: string): Promise<void> {
  const path = fileURLToPath(new URL(`./pictures/${name}.png`, import.meta.url));
  await page.evaluate(() => document.fonts.ready);
  await page.mouse.move(0, 0);
  await page.screenshot({ path, animations: 'disabled', caret: 'hide' });
  expect(statSync(path).size).toBeLessThan(MOST_BYTES);
}
