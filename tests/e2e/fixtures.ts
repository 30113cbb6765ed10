import { test as base, expect, type Page } from '@playwright/test';
import type { PersonKey } from '../support/people';
import { signInAs } from './sign-in';

interface Options {
  /** What the browser may complain about in this test, such as the 404 that the test asks for. */
  forgiven: RegExp | undefined;
  /** Who the page belongs to; null for somebody not signed in. */
  as: PersonKey | null;
}

/** A page on which nothing may go wrong unnoticed: an error in the console or in a script fails the test. */
export const test = base.extend<Options>({
  forgiven: [undefined, { option: true }],
  as: ['learner', { option: true }],
  page: async ({ page, forgiven, as }, use) => {
    if (as) await signInAs(page, as);
    const complaints: string[] = [];
    watch(page, complaints);
    await use(page);
    expect(complaints.filter((text) => !forgiven?.test(text))).toEqual([]);
  },
  // Requests of the same person that the page belongs to.
  request: ({ page }, use) => use(page.request),
});

function watch(page: Page, complaints: string[]): void {
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(`${message.text()} ${message.location().url}`);
  });
  page.on('pageerror', (error) => complaints.push(error.message));
}

export { expect };
