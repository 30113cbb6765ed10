import type { Page } from '@playwright/test';
import { recordAttempt } from '@/db/queries/attempts';
import { anAttempt } from '../support/attempt-rows';
import { codeOf } from '../support/case-codes';
import { harbour, people } from '../support/people';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { makeCall, openAttempt, primePressureLow, takeReading, weakLiftPump, writeFinding } from './learner';
import { expectNotThere } from './not-yours-alike';

const code = codeOf('lift-pump-weak', 800);
const THEIRS = 'debdebdebdebdebdebde';
const PRIME = 'prime-pressure@key-on@dial-0-30-psi';
const regions = { skipped: 'Try a check you skipped', belief: 'What each reading said', route: 'Route' };

/** A case worked the long way round, up to its debrief; its address without a query. */
async function workedToTheEnd(page: Page): Promise<string> {
  await openAttempt(page, code);
  await takeReading(page, { check: 'rail-pressure', condition: 'idle' });
  await takeReading(page, primePressureLow.hookUp);
  await writeFinding(page, primePressureLow.finding);
  await makeCall(page, weakLiftPump);
  return new URL(page.url()).pathname;
}

test('the debrief shows both routes, how belief moved, and both in tables', async ({ page }) => {
  await workedToTheEnd(page);
  const route = page.getByRole('region', { name: regions.route, exact: true });
  await expect(route.getByRole('img', { name: /Two routes on one axis/ })).toBeVisible();
  await route.getByText('The routes as a table').click();
  await expect(route.getByRole('table', { name: 'You' })).toContainText('Prime pressure, key on');
  const belief = page.getByRole('region', { name: regions.belief, exact: true });
  await expect(belief.getByRole('img', { name: /Belief per area/ })).toBeVisible();
  await belief.getByText('Belief as a table').click();
  // The head, the start and two readings.
  await expect(belief.getByRole('row')).toHaveCount(4);
});

test('a skipped check shows what it would have shown, what it says and what it does to the belief', async ({
  page,
}) => {
  await workedToTheEnd(page);
  const skipped = page.getByRole('region', { name: regions.skipped });
  await skipped.getByRole('link').first().click();
  await page.waitForURL(/\?try=.*#try$/);
  await expect(skipped.getByText(/^(Pass|Fail|Can’t tell)$/).first()).toBeVisible();
  await expect(skipped.getByRole('table', { name: /before and after this reading/ })).toContainText('priming');
  await expect(skipped.getByRole('link').first()).toHaveAttribute('aria-current', 'true');
});

test('a check that cannot be made is refused in words, and the rest of the debrief stays', async ({ page }) => {
  const debrief = await workedToTheEnd(page);
  for (const tried of ['x', 'prime-pressure@key-on@no-such-gauge', 'prime-pressure@snap@dial-0-30-psi', '<b>@@@']) {
    await page.goto(`${debrief}?${new URLSearchParams({ try: tried })}`);
    await expect(page.getByText('This check cannot be made so on this vehicle.')).toBeVisible();
    await expect(page.getByRole('region', { name: 'Marks' })).toBeVisible();
  }
});

test('nothing can be tried on an open attempt', async ({ page, request }) => {
  const id = await openAttempt(page, code);
  for (const headers of [{}, { RSC: '1' }]) {
    const answer = await request.get(`/learn/cases/${id}/debrief?try=${PRIME}&at=key-on`, { headers, maxRedirects: 0 });
    const body = await answer.text();
    expect(body).not.toContain('lift-pump-weak');
    expect(body).not.toContain('before and after this reading');
  }
  await page.goto(`/learn/cases/${id}/debrief?try=${PRIME}`);
  await expect(page).toHaveURL(new RegExp(`/learn/cases/${id}$`));
});

test('somebody else’s debrief with something to try looks the same as one that does not exist', async ({ request }) => {
  await recordAttempt(
    openPlace(placeFor(SHARED_PORT)),
    anAttempt({
      id: THEIRS,
      key: THEIRS,
      learnerId: people.secondLearner.id,
      organizationId: harbour.id,
      caseCode: code,
    }),
  );
  await expectNotThere(request, THEIRS, (id) => `/learn/cases/${id}/debrief?try=${PRIME}&at=idle`);
});

test('pressures before and after the repair follow the condition that is chosen', async ({ page }) => {
  await workedToTheEnd(page);
  await page
    .getByRole('navigation', { name: 'Condition in which the pressures are shown' })
    .getByText('key on')
    .click();
  await page.waitForURL(/\?at=key-on/);
  await page.getByText('Pressures as a table').click();
  await expect(page.getByRole('row', { name: /F1 · main-filter inlet/ })).toContainText('kPa');
});

test('a case that looks like this one starts, but not by way of a case that is still open', async ({ page }) => {
  const debrief = await workedToTheEnd(page);
  const open = await openAttempt(page, code);
  await page.goto(debrief);
  const button = page.getByRole('button', { name: 'Start one that looks like it' });
  await expect(button).toBeEnabled();
  await button.evaluate((element, attempt) => {
    const field = (element as HTMLButtonElement).form?.elements.namedItem('attemptId');
    if (field instanceof HTMLInputElement) field.value = attempt;
  }, open);
  await button.click();
  await expect(page.getByText('There is no such thing here, or it is not yours.')).toBeVisible();
  await page.reload();
  await expect(button).toBeEnabled();
  await button.click();
  await page.waitForURL(/\/learn\/cases\/[0-9a-f]{20}$/);
});

test('axe finds nothing serious in a debrief with everything unfolded, in both themes', async ({ page }) => {
  const debrief = await workedToTheEnd(page);
  await page.goto(`${debrief}?try=lift-pump-supply@key-on@multimeter#try`);
  for (const summary of await page.locator('summary').all()) await summary.click();
  await expectClean(page);
});

test('on a narrow screen nothing of the debrief hangs over', async ({ page }) => {
  const debrief = await workedToTheEnd(page);
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto(`${debrief}?try=lift-pump-supply@key-on@multimeter`);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
});
