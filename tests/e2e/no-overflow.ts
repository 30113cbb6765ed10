import type { Page } from '@playwright/test';
import { expect } from './fixtures';

/** Nothing is wider than the screen. */
export async function expectNoOverflow(page: Page): Promise<void> {
  const { content, screen } = await page.evaluate(() => ({
    content: document.documentElement.scrollWidth,
    screen: document.documentElement.clientWidth,
  }));
  expect(content).toBeLessThanOrEqual(screen);
}
