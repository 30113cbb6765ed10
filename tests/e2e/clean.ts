import type { Page } from '@playwright/test';
import axe, { type AxeResults, type RunOptions } from 'axe-core';
import { expect } from './fixtures';

/** Elements that pass are not described one by one: that would take longer than everything else. */
const EVERY_RULE: RunOptions = { resultTypes: ['violations'] };
const COLOURS: RunOptions = { ...EVERY_RULE, runOnly: { type: 'rule', values: ['color-contrast'] } };

/**
 * axe finds nothing serious, in both themes; the dark one differs in nothing but its colours.
 *
 * @param where  What is told besides when it finds something.
 */
export async function expectClean(page: Page, where?: string): Promise<void> {
  // Between two pages there is none for a moment.
  await expect(page).toHaveTitle(/./);
  // It looks into the page itself alone.
  expect(page.frames()).toHaveLength(1);
  await page.evaluate(axe.source);
  await page.emulateMedia({ colorScheme: 'light' });
  expect(await grave(page, EVERY_RULE), where).toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await grave(page, COLOURS), where).toEqual([]);
}

async function grave(page: Page, options: RunOptions): Promise<string[]> {
  const violations = await page.evaluate(async (asked) => {
    const { axe: here } = window as unknown as { axe: { run(options: RunOptions): Promise<AxeResults> } };
    return (await here.run(asked)).violations;
  }, options);
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
}
