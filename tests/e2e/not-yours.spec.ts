import { listActs } from '@/db/queries/acts';
import { recordAttempt } from '@/db/queries/attempts';
import { anAttempt } from '../support/attempt-rows';
import { codeOf } from '../support/case-codes';
import { college, people } from '../support/people';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';
import { expect, test } from './fixtures';
import { fillCall, hookUp, openAttempt, primePressureLow, weakLiftPump } from './learner';
import { expectNotThere, MISSING } from './not-yours-alike';

const THEIRS = 'feedfeedfeedfeedfeed';

test.beforeAll(async () => {
  const db = openPlace(placeFor(SHARED_PORT));
  await recordAttempt(
    db,
    anAttempt({
      id: THEIRS,
      learnerId: people.stranger.id,
      organizationId: college.id,
      caseCode: codeOf('lift-pump-weak', 800),
    }),
  );
});

for (const page of ['', '/debrief'])
  test(`somebody else’s attempt${page} looks the same as one that does not exist`, async ({ request }) => {
    await expectNotThere(request, THEIRS, (id) => `/learn/cases/${id}${page}`);
  });

test('the list shows nobody else’s attempts', async ({ page }) => {
  await page.goto('/learn');
  await expect(page.locator(`a[href*="${THEIRS}"]`)).toHaveCount(0);
});

test('nothing can be done in somebody else’s attempt', async ({ page }) => {
  await openAttempt(page, codeOf('lift-pump-weak', 800));
  await hookUp(page, primePressureLow.hookUp);
  await fillCall(page, weakLiftPump);
  for (const button of ['Take the reading', 'Make the call'])
    for (const id of [THEIRS, MISSING]) {
      await page.getByRole('button', { name: button }).evaluate((element, attempt) => {
        const field = (element as HTMLButtonElement).form?.elements.namedItem('attemptId');
        if (field instanceof HTMLInputElement) field.value = attempt;
      }, id);
      await page.getByRole('button', { name: button }).click();
      await expect(page.getByText('There is no such thing here, or it is not yours.')).toBeVisible();
      await page.reload();
      await page.getByLabel('Instrument').selectOption('dial-0-30-psi');
      await page.getByLabel('Condition').selectOption('key-on');
      await fillCall(page, weakLiftPump);
    }
  expect(await listActs(openPlace(placeFor(SHARED_PORT)), people.stranger.id, THEIRS)).toEqual([]);
});
