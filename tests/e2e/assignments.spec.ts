import { randomBytes } from 'node:crypto';
import type { Page } from '@playwright/test';
import { eq } from 'drizzle-orm';
import type { Db } from '@/db/client';
import { recordAct } from '@/db/queries/acts';
import { addingAssignedPerson } from '@/db/queries/assigned-people';
import { recordAttempt } from '@/db/queries/attempts';
import { addingClass, addingClassPlace } from '@/db/queries/classes';
import { listLogEntries } from '@/db/queries/log-entries';
import { listUnreadNudges } from '@/db/queries/nudges';
import { assignments, setVersions, turnResults, turns, turnTasks } from '@/db/schema';
import { together } from '@/db/together';
import { anAct, anAttempt, aReading } from '../support/attempt-rows';
import { callAction } from '../support/call-action';
import { codeOf, storedCase } from '../support/case-codes';
import { newSession } from '../support/people';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';
import { addAssignment, addSet, addTurn, aSetBody, someRules } from '../support/teaching-rows';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { expectNoOverflow } from './no-overflow';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';

test.use({ as: null });

const origin = `http://127.0.0.1:${SHARED_PORT}`;
let known: Db | undefined;
/** One connection: a transaction of one would lock out another. */
function db(): Db {
  known ??= openPlace(placeFor(SHARED_PORT));
  return known;
}
const HOUR = 3_600_000;

let instructor: Somebody;
let learner: Somebody;
let classId: string;
let setId: string;

test.beforeEach(async ({ page }) => {
  instructor = await somebodyNew('instructor');
  const { organizationId } = instructor;
  learner = await somebodyNew('learner', organizationId);
  classId = randomBytes(8).toString('hex');
  setId = randomBytes(8).toString('hex');
  await together(db(), [
    addingClass(db(), {
      id: classId,
      organizationId,
      name: 'Tuesday class',
      timeZone: 'Europe/Berlin',
      createdAt: new Date(),
    }),
    addingClassPlace(db(), { classId, userId: learner.id, joinedAt: new Date() }),
  ]);
  await addSet(db(), { id: setId, organizationId, createdBy: instructor.id, shared: true });
  await signInNew(page, instructor);
});

/** An assignment that is open now, with the learner named. */
async function openAssignment(rules: Parameters<typeof someRules>[0] = {}): Promise<string> {
  const id = randomBytes(8).toString('hex');
  const { organizationId } = instructor;
  const now = Date.now();
  await addAssignment(db(), {
    id,
    organizationId,
    setVersionId: `${setId}-1`,
    createdBy: instructor.id,
    rules: someRules({ minutes: 60, ...rules }),
    opensAt: new Date(now - HOUR),
    closesAt: new Date(now + 24 * HOUR),
  });
  await together(db(), [addingAssignedPerson(db(), { assignmentId: id, userId: learner.id, named: true })]);
  return id;
}

/** A turn of the learner's, begun half an hour ago, with a gauge destroyed at its case. */
async function turnAtWork(assignmentId: string): Promise<string> {
  const id = randomBytes(8).toString('hex');
  const whose = { learnerId: learner.id, organizationId: instructor.organizationId };
  const began = new Date(Date.now() - HOUR / 2);
  await addTurn(db(), { id, assignmentId, ...whose, startedAt: began, endsAt: new Date(began.getTime() + HOUR) });
  const attempt = { id: `a${id}`, ...whose, key: id, createdAt: began, ...storedCase(codeOf('lift-pump-weak', 800)) };
  await recordAttempt(db(), anAttempt(attempt));
  await db().insert(turnTasks).values({ turnId: id, place: 1, attemptId: attempt.id });
  const body = aReading({ shown: [{ kind: 'destroyed', quantity: 'pressure' }] });
  await recordAct(db(), learner.id, anAct({ attemptId: attempt.id, key: id, body, createdAt: began }));
  return id;
}

async function logged(): Promise<string[]> {
  return (await listLogEntries(db(), instructor.organizationId, {}, 20)).map(({ event }) => event);
}

async function press(page: Page, name: string): Promise<void> {
  const button = page.getByRole('button', { name, exact: true });
  await expect(button).toBeEnabled();
  await button.focus();
  await page.keyboard.press('Enter');
}

test('a set is given by keyboard; what is wrong is said at its field, and nothing typed is lost', async ({ page }) => {
  await page.goto(`/assignments/new?set=${setId}`);
  await expect(page.getByLabel('Title')).toHaveValue('Supply side');
  await page.getByLabel('Title').fill('Tuesday’s work');
  await page.getByLabel('Turns allowed').fill('0');
  await page.getByLabel('Opens').fill('2031-03-30T02:30');
  await page.getByLabel('Closes').fill('2031-04-06T18:00');
  await page.getByLabel('Tuesday class').focus();
  await page.keyboard.press('Space');
  // The class brings its clock with it.
  await expect(page.getByLabel('By the clock of')).toHaveValue('Europe/Berlin');
  await page.getByLabel('Weigh the parts of a case differently').check();
  await page.getByLabel('Verdicts').fill('99');
  await press(page, 'Give it');
  await expect(page.getByText('Type a whole number from 1 to 10.')).toBeVisible();
  await expect(page.getByText('this time is never shown there')).toBeVisible();
  await expect(page.getByText('whole numbers that sum to 100')).toBeVisible();
  await expect(page.getByLabel('Opens')).toBeFocused();
  await expect(page.getByLabel('Title')).toHaveValue('Tuesday’s work');
  await expect(page.getByLabel('Tuesday class')).toBeChecked();
  await expectClean(page, 'the form with what is wrong');

  await page.getByLabel('Opens').fill('2031-03-30T08:00');
  await page.getByLabel('Turns allowed').fill('2');
  await page.getByLabel('Weigh the parts of a case differently').uncheck();
  await press(page, 'Give it');
  await page.waitForURL(/\/assignments\/\w{20}$/);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Tuesday’s work');
  const id = new URL(page.url()).pathname.split('/').at(-1) ?? '';
  const [row] = await db().select().from(assignments).where(eq(assignments.id, id));
  // Summer time began that night: 08:00 in Berlin is 06:00 UTC.
  expect(row?.opensAt).toEqual(new Date('2031-03-30T06:00Z'));
  const [version] = await db().select().from(setVersions).where(eq(setVersions.setId, setId));
  expect(version?.frozenAt).not.toBeNull();
  await expect(page.getByText('2 turns; the best one counts.')).toBeVisible();
  await expect(page.getByText('No hints, no belief, no marks', { exact: false })).toBeVisible();
  await expect(page.getByRole('row', { name: /^Pat .* not begun/ })).toBeVisible();
  await expectClean(page, 'the assignment');

  await page.setViewportSize({ width: 390, height: 800 });
  await expectNoOverflow(page);
  await page.getByRole('link', { name: 'Give it again' }).click();
  await expect(page.getByLabel('Turns allowed')).toHaveValue('2');
  await expect(page.getByLabel('Opens')).toHaveValue('');
  await expectNoOverflow(page);
  await page.goto('/assignments');
  await expect(page.getByRole('heading', { name: 'Coming' })).toBeVisible();
  await expect(page.getByRole('link', { name: 'Tuesday’s work' })).toBeVisible();
  await expectNoOverflow(page);
  expect(await logged()).toContain('assignment-given');
});

test('dates move while nobody is hurt, more time reaches a turn that goes on, and it is put away', async ({ page }) => {
  const id = await openAssignment();
  const turnId = await turnAtWork(id);
  const ends = async () => (await db().select().from(turns).where(eq(turns.id, turnId)))[0]?.endsAt.getTime() ?? 0;
  const before = await ends();
  const kept = () => db().select().from(turnResults).where(eq(turnResults.turnId, turnId));
  await db().insert(turnResults).values({ turnId, total: 80, waiting: 0, tasks: [] });
  await page.goto(`/assignments/${id}`);
  await page.getByLabel(/^Extra time of/).fill('25');
  await press(page, 'Store');
  await expect(page.getByText('Stored.')).toBeVisible();
  expect(await ends()).toBe(before + HOUR / 4);
  // Late work may cost nothing now.
  expect(await kept()).toEqual([]);

  // Somebody has begun: the opening stays.
  await page.getByLabel('Opens').fill('2031-01-01T08:00');
  await page.getByLabel('Closes').fill('2031-01-02T08:00');
  await press(page, 'Move the dates');
  await expect(page.getByText('so the opening stays where it is')).toBeVisible();
  await expect(page.getByLabel('Closes')).toHaveValue('2031-01-02T08:00');

  await press(page, 'Put it away');
  await expect(page.getByText('This assignment is put away')).toBeVisible();
  expect(await logged()).toEqual(expect.arrayContaining(['extra-time-given', 'assignment-archived']));
});

test.describe('live', () => {
  test.use({ forgiven: /ERR_INTERNET_DISCONNECTED|ERR_FAILED/ });

  test('the page says who is where, loses the connection, says so, finds it again, and writes', async ({
    page,
    context,
  }) => {
    const id = await openAssignment();
    await page.goto(`/assignments/${id}/live`);
    const row = page.getByRole('row', { name: new RegExp(learner.name) });
    await expect(row).toContainText('not begun');
    await turnAtWork(id);
    await expect(row).toContainText('task 1 of 2: case, 0 done');
    await expect(row).toContainText('1 event');
    await expect(row).toContainText('nothing done for 30 min');
    await expectClean(page, 'the live page');

    await context.setOffline(true);
    await expect(page.getByRole('status').filter({ hasText: 'No connection since' })).toBeVisible();
    await context.setOffline(false);
    await expect(page.getByText('No connection since')).toBeHidden();
    await expect(page.getByText(/^As of \d\d:\d\d:\d\d\.$/)).toBeVisible();

    await row.getByText('Write to').focus();
    await page.keyboard.press('Enter');
    await row.getByLabel('Message to').fill('Mind the hose clamp.');
    await page.keyboard.press('Enter');
    await expect(row.getByText('Sent.')).toBeVisible();
    const to = { assignmentId: id, userId: learner.id };
    expect((await listUnreadNudges(db(), to)).map(({ text }) => text)).toEqual(['Mind the hose clamp.']);
    await expect(row).toContainText('1 message unread');
    await page.setViewportSize({ width: 390, height: 800 });
    await expectNoOverflow(page);
  });
});

test('the live page of an anonymous assignment names nobody, and nobody else sees one', async ({ page }) => {
  const id = await openAssignment({ anonymous: true });
  await turnAtWork(id);
  const told = await (await page.request.get(`/assignments/${id}/live/now`)).text();
  expect(told).toContain('Learner 1');
  for (const secret of [learner.name, learner.id, 'lift-pump-weak']) expect(told).not.toContain(secret);

  const stranger = await somebodyNew('instructor');
  const cookie = await newSession(db(), stranger.id, stranger.organizationId);
  await signInNew(page, stranger);
  for (const path of ['', '/live', '/live/now']) {
    const [theirs, none] = await Promise.all(
      [id, 'nonexistent'].map((one) => page.request.get(`/assignments/${one}${path}`)),
    );
    expect([theirs?.status(), none?.status()], path).toEqual([404, 404]);
  }
  expect((await page.request.get(`/assignments/new?like=${id}`)).ok()).toBe(true);
  const form = { key: '0123456789abcdef0123456789abcdef', setId, title: 'Theirs', classIds: classId, turns: '1' };
  const when = { opens: '2031-01-01T08:00', closes: '2031-01-02T08:00', timeZone: 'UTC' };
  const own = randomBytes(8).toString('hex');
  const { organizationId } = stranger;
  const asked = async (fields: object) =>
    (await callAction({ origin, cookie }, '/assignments/new', 'giveAssignment', { ...form, ...when, ...fields })).text;
  expect(await asked({})).toContain('There is no such set');
  await addSet(db(), { id: own, organizationId, createdBy: stranger.id, body: aSetBody() });
  expect(await asked({ setId: own })).toContain('One of the classes');
  expect(await asked({ setId: own, classIds: [], personIds: learner.id })).toContain('One of the people');
  const mine = await db().select().from(assignments).where(eq(assignments.organizationId, organizationId));
  expect(mine).toEqual([]);
});

test('a class is given a clock of its own', async ({ page }) => {
  await page.goto(`/classes/${classId}`);
  await page.getByLabel('Clock that this class goes by').selectOption('America/Chicago');
  await press(page, 'Go by this clock');
  await expect(page.getByText('are timed by that clock from now on')).toBeVisible();
  await page.goto('/assignments/new');
  await page.getByLabel('Tuesday class').check();
  await expect(page.getByLabel('By the clock of')).toHaveValue('America/Chicago');
});
