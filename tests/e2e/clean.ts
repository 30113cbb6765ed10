import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect } from './fixtures';

/** axe finds nothing serious, in both themes; the dark one differs in nothing but its colours. */
export async function expectClean(page: Page): Promise<void> {
  // Between two pages there is none for a moment.
  await expect(page).toHaveTitle(/./);
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
