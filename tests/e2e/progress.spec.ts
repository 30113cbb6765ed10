import type { Page } from '@playwright/test';
import messages from '@/content/messages/en.json' with { type: 'json' };
import { recordAttempt } from '@/db/queries/attempts';
import { recordCall } from '@/db/queries/calls';
import { givingPoints } from '@/db/queries/overrides';
import { together } from '@/db/together';
import { aNewCall, anAttempt } from '../support/attempt-rows';
import { codeOf, storedCase } from '../support/case-codes';
import { aFindingGrade, aGradedCase } from '../support/graded-case';
import { shared } from './at-questions';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { expectNoOverflow } from './no-overflow';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';
import { tabTo } from './tabbing';

const { progress: words } = messages;
const topic = 'Priming and lift pump';

/** A case that somebody called right, with two findings on the topic of its cause. */
async function callCase(who: Somebody): Promise<string> {
  const attemptId = `shown-${who.id}`;
  const findings = [aFindingGrade(), aFindingGrade({ seq: 4, check: 'main-filter-drop' })];
  const { grade } = aGradedCase({ findings });
  const { id: learnerId, organizationId } = who;
  const stored = storedCase(codeOf('lift-pump-weak', 800));
  await recordAttempt(shared(), anAttempt({ ...stored, id: attemptId, key: attemptId, learnerId, organizationId }));
  await recordCall(shared(), learnerId, aNewCall({ attemptId, key: attemptId, grade, calledAt: new Date() }));
  return attemptId;
}

const line = (page: Page, name = topic) =>
  page.getByRole('listitem').filter({ has: page.getByRole('heading', { name, exact: true }) });

test('a graded case shows on the progress of whoever called it, down to its findings', async ({ page }) => {
  const learner = await somebodyNew('learner');
  await signInNew(page, learner);
  await page.goto('/learn/progress');
  await expect(page.getByText(words.empty)).toBeVisible();
  await expect(line(page).getByText(words.untested)).toBeVisible();
  await expect(line(page).getByRole('img')).toHaveCount(0);

  const attemptId = await callCase(learner);
  await page.reload();
  await expect(line(page).getByRole('img')).toBeVisible();
  await expect(line(page).getByText(/1 response, 1 case among them; mean mark 100 %/)).toBeVisible();
  await expect(line(page, 'Fuel quality').getByText(words.untested)).toBeVisible();
  await line(page).getByText(words.evidenceTitle).click();
  const row = line(page).getByRole('row').last();
  await expect(row).toContainText('4 of 4');
  await expect(row).toContainText('on the finding of act 2');
  await expect(row.getByRole('link')).toHaveAttribute('href', `/learn/cases/${attemptId}/debrief#graded`);
  await expectClean(page);
});

test('points that a person gives move it', async ({ page }) => {
  const learner = await somebodyNew('learner');
  const attemptId = await callCase(learner);
  await signInNew(page, learner);
  await page.goto('/learn/progress');
  const ability = () => page.getByRole('row', { name: topic }).getByRole('cell').first().textContent();
  const before = Number((await ability())?.replace('−', '-'));
  const given = { id: attemptId, attemptId, points: 0, reason: 'Copied', givenBy: 'somebody', givenAt: new Date() };
  await together(shared(), [
    ...givingPoints(shared(), { ...given, part: 'verdicts' }),
    ...givingPoints(shared(), { ...given, id: `${attemptId} too`, part: 'call' }),
  ]);
  await page.reload();
  expect(Number((await ability())?.replace('−', '-'))).toBeLessThan(before);
});

test('the line of a role is chosen, and the evidence opened, by keyboard alone', async ({ page }) => {
  const learner = await somebodyNew('learner');
  await callCase(learner);
  await signInNew(page, learner);
  await page.goto('/learn');
  await tabTo(page, page.getByRole('navigation', { name: 'Main' }).getByRole('link', { name: words.title }));
  await page.keyboard.press('Enter');
  await page.waitForURL('**/learn/progress');
  await tabTo(page, page.getByLabel(words.role));
  await page.keyboard.press('End');
  await tabTo(page, page.getByRole('button', { name: words.show }));
  await page.keyboard.press('Enter');
  await page.waitForURL(/role=[a-z-]+/);
  await tabTo(page, line(page).locator('summary'));
  await page.keyboard.press('Enter');
  await expect(line(page).getByText('4 of 4')).toBeVisible();
});

test('whoever answers for people sees what they have shown, with the way to their work', async ({ page }) => {
  const learner = await somebodyNew('learner');
  const lead = await somebodyNew('shop-lead', learner.organizationId);
  const attemptId = await callCase(learner);
  await signInNew(page, lead);
  await page.goto(`/people/${learner.id}`);
  await page
    .getByRole('link', { name: words.title })
    .or(page.getByRole('link', { name: /has shown/ }))
    .click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(`Progress of ${learner.name}`);
  await line(page).getByText(words.evidenceTitle).click();
  await expect(line(page).getByRole('link')).toHaveAttribute('href', `/review/attempts/${attemptId}`);
  await expectClean(page);
});

test('nothing sticks out sideways on a phone', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 780 });
  const learner = await somebodyNew('learner');
  await callCase(learner);
  await signInNew(page, learner);
  await page.goto('/learn/progress');
  await line(page).getByText(words.evidenceTitle).click();
  await expectNoOverflow(page);
});
