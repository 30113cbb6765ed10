import { randomBytes } from 'node:crypto';
import type { Page } from '@playwright/test';
import { recordAttempt } from '@/db/queries/attempts';
import { addingManualMark } from '@/db/queries/manual-marks';
import { appeals, questionMarks, turnTasks } from '@/db/schema';
import { together } from '@/db/together';
import type { AssignmentRules } from '@/lib/assignments/rules';
import { questionFromWritten } from '@/lib/questions/written/question-from-written';
import { anAttempt } from '../support/attempt-rows';
import { catalogue } from '../support/bench-rig';
import { codeOf, storedCase } from '../support/case-codes';
import { addAssignment, addSet, addTurn, someRules } from '../support/teaching-rows';
import { aWrittenQuestion } from '../support/written-questions';
import { addWritten, openSitting, shared } from './at-questions';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { fillFinding, findings, makeCall, openAttempt, primePressureLow, takeReading, weakLiftPump } from './learner';
import { expectNoOverflow } from './no-overflow';
import { expectNotThere } from './not-yours-alike';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';
import { tabTo } from './tabbing';

const code = codeOf('lift-pump-weak', 800);
const WORDS = 'The pump hums but hardly builds any pressure.';
const COMMENT = 'Say also what the reading leaves under suspicion.';
const REASON = 'You went there first, which the route does not see.';
const hex = () => randomBytes(10).toString('hex');

/** An assignment of somebody's organisation, open for years, with a turn that was handed in. */
async function addHandedIn(
  { id: learnerId, organizationId }: Somebody,
  { attemptId, sittingId, rules }: { attemptId?: string; sittingId?: string; rules: Partial<AssignmentRules> },
): Promise<void> {
  const db = shared();
  const [id, turnId] = [hex(), hex()];
  const { versionId } = await addSet(db, { id: `set-${id}`, organizationId, createdBy: 'nobody' });
  const closesAt = new Date(Date.now() + 1000 * 86_400_000);
  const title = `Assignment ${id}`;
  await addAssignment(db, {
    id,
    organizationId,
    setVersionId: versionId,
    createdBy: 'nobody',
    title,
    closesAt,
    rules: someRules(rules),
  });
  const handedInAt = new Date();
  await addTurn(db, {
    id: turnId,
    assignmentId: id,
    learnerId,
    organizationId,
    sittingId: sittingId ?? null,
    handedInAt,
  });
  if (attemptId) await db.insert(turnTasks).values({ turnId, place: 1, attemptId });
  if (sittingId) await db.insert(turnTasks).values({ turnId, place: 2, sittingPlace: 1 });
}

/** A case of somebody's, worked up to its debrief. @returns the attempt's id. */
async function workedCase(page: Page, { id: learnerId, organizationId }: Somebody): Promise<string> {
  const attemptId = await openAttempt(page, code, { learnerId, organizationId });
  await takeReading(page, primePressureLow.hookUp);
  await fillFinding(page, primePressureLow.finding);
  await page.locator('textarea[name="words"]').fill(WORDS);
  await page.getByRole('button', { name: 'Write it down' }).click();
  await expect(findings(page)).toHaveCount(1);
  await makeCall(page, weakLiftPump);
  return attemptId;
}

/** Free text of somebody's that waits to be marked, with its mark by a first person where there is one. */
async function addText({ id: learnerId, organizationId }: Somebody, markedBy?: string): Promise<string> {
  const body = aWrittenQuestion('words');
  const seed = 'maple';
  const at = new Date();
  const sittingId = await openSitting([{ writtenVersionId: await addWritten(body), seed }], {
    learnerId,
    organizationId,
    mode: 'check',
    handedInAt: at,
  });
  await shared()
    .insert(questionMarks)
    .values({
      sittingId,
      place: 1,
      answer: { form: 'words', text: 'Air gets in.' },
      asked: questionFromWritten(body, seed, catalogue),
      mark: { credit: null, score: null, notes: [] },
      markedAt: at,
    });
  if (markedBy) {
    const mark = { sittingId, place: 1, seq: 1, score: 3, comment: 'First says three', markedBy, markedAt: at };
    await together(shared(), [addingManualMark(shared(), mark)]);
  }
  return sittingId;
}

test.describe('review', () => {
  test.use({ as: null });

  test('an instructor replays a case, comments and gives points; the learner sees both, appeals and is answered', async ({
    page,
    browser,
  }) => {
    test.slow();
    const lea = await somebodyNew('learner');
    const ira = await somebodyNew('instructor', lea.organizationId);
    await signInNew(page, lea);
    const attemptId = await workedCase(page, lea);
    await expect(page.getByRole('region', { name: 'From a person' })).toContainText('Nobody has commented');
    await addHandedIn(lea, { attemptId, rules: { mode: 'practice' } });

    const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
    const desk = await context.newPage();
    await signInNew(desk, ira);
    await desk.goto('/review');
    await expectClean(desk);
    const turn = desk.getByRole('region', { name: 'Handed in' }).getByRole('listitem').filter({ hasText: lea.name });
    await turn.getByRole('link', { name: 'Case 1' }).click();
    await expect(desk.getByRole('heading', { level: 1 })).toContainText(lea.name);
    const acts = desk.getByRole('region', { name: 'Act by act' });
    await expect(acts.getByText(/^minute \d+$/)).toHaveCount(3);
    await expect(acts.getByText(WORDS)).toHaveCount(1);
    await expect(acts).toContainText('Right: Fail.');
    await expect(acts).toContainText('Believed then:');
    await expectClean(desk);

    // By keyboard alone: open the field of the finding, write, send.
    const finding = acts.locator('#act-2');
    await tabTo(desk, finding.locator('summary').last());
    await desk.keyboard.press('Enter');
    await tabTo(desk, finding.getByLabel('What you say to the learner'));
    await desk.keyboard.type(COMMENT);
    await desk.keyboard.press('Tab');
    await desk.keyboard.press('Enter');
    await expect(finding.locator('li', { hasText: COMMENT })).toBeVisible();

    const parts = desk.getByRole('region', { name: 'Points by part' });
    const route = parts.getByRole('listitem').filter({ has: desk.getByRole('heading', { name: 'Route' }) });
    await route.getByText('Give other points').click();
    await route.getByLabel(/^Points, 0 to/).fill('99');
    await route.getByLabel('Reason, which the learner reads').fill(REASON);
    await route.getByRole('button', { name: 'Give these points' }).evaluate((button) => {
      (button as HTMLButtonElement).form?.setAttribute('novalidate', '');
    });
    await route.getByRole('button', { name: 'Give these points' }).click();
    await expect(route.getByText(/at most \d+ points/)).toBeVisible();
    await route.getByLabel(/^Points, 0 to/).fill('1');
    await route.getByRole('button', { name: 'Give these points' }).click();
    await expect(route.getByText('counts 1 of')).toBeVisible();

    await page.reload();
    const told = page.getByRole('region', { name: 'From a person' });
    await expect(told).toContainText(COMMENT);
    await expect(told).toContainText(REASON);
    await expect(told).toContainText(/Counts: \d+ of 100\. Computed: \d+\./);
    await told.getByText('Ask for it to be looked at again').click();
    await told.getByLabel('What should be looked at').fill('The route was short.');
    await told.getByRole('button', { name: 'Send it' }).click();
    await expect(told.getByRole('region')).toContainText('Open · to be answered by');
    await expect(told.getByText('Ask for it to be looked at again')).toHaveCount(0);
    await expectClean(page);
    await page.setViewportSize({ width: 390, height: 844 });
    await expectNoOverflow(page);

    await shared()
      .update(appeals)
      .set({ dueAt: new Date(0) });
    await desk.setViewportSize({ width: 390, height: 844 });
    for (const path of ['/review', `/review/attempts/${attemptId}`, '/review/appeals']) {
      await desk.goto(path);
      await expectNoOverflow(desk);
    }
    await expect(desk.getByText('overdue')).toBeVisible();
    await expectClean(desk);
    await desk.getByRole('radio', { name: 'Decline it' }).check();
    await desk.getByLabel('Answer, which the learner reads').fill('It was, and that is in the points.');
    await desk.getByRole('button', { name: 'Send the answer' }).click();
    await expect(desk.getByText('No appeal is open.')).toBeVisible();
    await page.reload();
    await expect(told.getByRole('region')).toContainText('Declined');
    await expect(told).toContainText('It was, and that is in the points.');
    await context.close();
  });

  test('nobody reviews their own, another organisation’s, or what would tell them their own case', async ({ page }) => {
    const ira = await somebodyNew('instructor,learner');
    const sam = await somebodyNew('learner');
    const [own, others, open, theirs] = [hex(), hex(), hex(), hex()];
    const colleague = await somebodyNew('learner', ira.organizationId);
    const rows = [
      { id: own, learnerId: ira.id, organizationId: ira.organizationId, ...storedCase(codeOf('lift-pump-weak', 700)) },
      { id: others, learnerId: sam.id, organizationId: sam.organizationId, ...storedCase(code) },
      { id: open, learnerId: ira.id, organizationId: ira.organizationId, ...storedCase(code) },
      { id: theirs, learnerId: colleague.id, organizationId: ira.organizationId, ...storedCase(code) },
    ];
    for (const row of rows) await recordAttempt(shared(), anAttempt({ key: row.id, ...row }));
    await signInNew(page, ira);
    for (const id of [own, others, theirs]) await expectNotThere(page.request, id, (one) => `/review/attempts/${one}`);
    const sitting = await addText(ira);
    await expectNotThere(page.request, sitting, (one) => `/review/sittings/${one}`);
    await signInNew(page, colleague);
    await expectNotThere(page.request, theirs, (one) => `/review/attempts/${one}`);
  });

  test('work that is marked without names names nobody, tells nothing early, and is marked twice unseen', async ({
    page,
  }) => {
    // What the organisation is called must not be what the learner is.
    const ira = await somebodyNew('instructor');
    const lea = await somebodyNew('learner', ira.organizationId);
    const ida = await somebodyNew('instructor', lea.organizationId);
    await signInNew(page, lea);
    const attemptId = await workedCase(page, lea);
    const sittingId = await addText(lea, ira.id);
    await addHandedIn(lea, { attemptId, sittingId, rules: { anonymous: true, secondMarker: true } });

    await signInNew(page, ida);
    const paths = [
      '/review',
      `/review/attempts/${attemptId}`,
      `/review/sittings/${sittingId}`,
      '/review/second-marks',
      '/questions/to-mark?names=yes',
      `/questions/to-mark?sitting=${sittingId}&place=1&names=yes`,
    ];
    for (const path of paths) {
      const answer = await (await page.request.get(path)).text();
      for (const secret of [lea.name, lea.id, 'First says three'])
        expect(answer, `${path}: ${secret}`).not.toContain(secret);
    }
    await page.goto(`/review/attempts/${attemptId}`);
    const handle = /Learner [A-Z]{2} \d{3}/.exec(
      (await page.getByRole('heading', { level: 1 }).textContent()) ?? '',
    )?.[0];
    expect(handle).toBeDefined();
    await page.getByRole('region', { name: 'To the whole' }).getByText('Comment on the whole').click();
    await page.getByRole('region', { name: 'To the whole' }).getByLabel('What you say to the learner').fill(COMMENT);
    await page.getByRole('button', { name: 'Keep the comment' }).last().click();
    await expect(page.getByRole('region', { name: 'To the whole' }).getByRole('listitem')).toContainText(COMMENT);
    await page.goto(`/review/sittings/${sittingId}`);
    await expect(page.getByRole('heading', { level: 1 })).toContainText(String(handle));
    await expect(page.getByText('waits for a second, independent mark')).toBeVisible();
    await expect(page.getByText('Give other points')).toHaveCount(0);

    await page.goto('/review/second-marks');
    await expectClean(page);
    await page.getByRole('radio', { name: '1' }).check();
    await page.getByRole('button', { name: 'Keep these marks' }).click();
    await expect(page.getByText('1 answer is marked twice.')).toBeVisible();
    const row = page.getByRole('row').filter({ hasText: String(handle) });
    await expect(row).toContainText(`3, ${ira.name}`);
    await expect(row).toContainText(`1, ${ida.name}`);
    await expect(page.getByText('Agreement: too few answers')).toBeVisible();
    await page.setViewportSize({ width: 390, height: 844 });
    await expectNoOverflow(page);

    // Assessed, and not closed for everybody yet.
    await signInNew(page, lea);
    const debrief = await (await page.request.get(`/learn/cases/${attemptId}/debrief`)).text();
    expect(debrief).not.toContain(COMMENT);
    const result = await (await page.request.get(`/learn/sittings/${sittingId}?at=1`)).text();
    expect(result).not.toContain('From a person');
  });
});
