import { test as base, expect, type Page } from '@playwright/test';

interface Options {
  /** What the browser may complain about in this test, such as the 404 that the test asks for. */
  forgiven: RegExp | undefined;
}

/** A page on which nothing may go wrong unnoticed: an error in the console or in a script fails the test. */
export const test = base.extend<Options>({
  forgiven: [undefined, { option: true }],
  page: async ({ page, forgiven }, use) => {
    const complaints: string[] = [];
    watch(page, complaints);
    await use(page);
    expect(complaints.filter((text) => !forgiven?.test(text))).toEqual([]);
  },
});

function watch(page: Page, complaints: string[]): void {
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(`${message.text()} ${message.location().url}`);
  });
  page.on('pageerror', (error) => complaints.push(error.message));
}

export { expect };
