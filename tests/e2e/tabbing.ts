import type { Locator, Page } from '@playwright/test';

/** Presses Tab until it has the focus, as far as twice round the page. */
export async function tabTo(page: Page, target: Locator): Promise<void> {
  for (let presses = 0; presses < 500; presses++) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never reaches ${target}`);
}
