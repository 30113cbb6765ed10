import type { Page } from '@playwright/test';
import { newSession, type PersonKey, people, SESSION_COOKIE } from '../support/people';
import { openPlace, type Place, placeFor, SHARED_PORT } from '../support/server';

/** Signs a page in as one of the test people, without the form: a new session in the organisation given, or the first. */
export async function signInAs(
  page: Page,
  key: PersonKey,
  { place = placeFor(SHARED_PORT), organizationId = null }: { place?: Place; organizationId?: string | null } = {},
): Promise<void> {
  const value = await newSession(openPlace(place), people[key].id, organizationId);
  await page
    .context()
    .addCookies([{ name: SESSION_COOKIE, value, domain: '127.0.0.1', path: '/', httpOnly: true, sameSite: 'Lax' }]);
}
