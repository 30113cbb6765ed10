import { recordAct } from '@/db/queries/acts';
import { recordAttempt } from '@/db/queries/attempts';
import { recordCall } from '@/db/queries/calls';
import { aFinding, aGrade, aNewCall, anAct, anAttempt } from '../support/attempt-rows';
import { codeOf } from '../support/case-codes';
import { harbour, people } from '../support/people';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';
import { expect, test } from './fixtures';

const code = codeOf('lift-pump-weak', 800);

/** An attempt of the learner under content that is no more, with a reading and a finding. */
async function oldAttempt(id: string): Promise<void> {
  const db = openPlace(placeFor(SHARED_PORT));
  await recordAttempt(
    db,
    anAttempt({
      id,
      key: id,
      learnerId: people.learner.id,
      organizationId: harbour.id,
      caseCode: code,
      contentHash: 'of another day',
    }),
  );
  await recordAct(db, people.learner.id, anAct({ attemptId: id, key: `${id}-1` }));
  await recordAct(
    db,
    people.learner.id,
    anAct({ attemptId: id, seq: 2, key: `${id}-2`, body: aFinding({ limit: 'a-line-of-old' }) }),
  );
}

test('an open attempt of another content version says that it cannot go on and shows what was written', async ({
  page,
}) => {
  await oldAttempt('0dd0000000000000000a');
  await page.goto('/learn/cases/0dd0000000000000000a');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('This case cannot go on');
  await expect(page.getByRole('region', { name: 'Findings' })).toContainText('6.5 psi');
  await expect(page.getByRole('button', { name: 'Take the reading' })).toHaveCount(0);
  await page.getByRole('button', { name: 'Start a new case' }).click();
  await page.waitForURL(/\/learn\/cases\/[0-9a-f]{20}$/);
});

test('a finished attempt of another content version shows its grade as it was given', async ({ page }) => {
  const id = '0dd0000000000000000b';
  await oldAttempt(id);
  const db = openPlace(placeFor(SHARED_PORT));
  const grade = { ...aGrade, total: 63, truth: { cause: 'a-cause-of-old', severity: 0.4 } };
  await recordCall(db, people.learner.id, aNewCall({ attemptId: id, seq: 3, grade }));
  await page.goto(`/learn/cases/${id}/debrief`);
  await expect(page.getByText('63 of 100 points')).toBeVisible();
  await expect(page.getByText('shown as they were recorded')).toBeVisible();
});
