import type { Browser, Locator, Page } from '@playwright/test';
import { eq } from 'drizzle-orm';
import messages from '@/content/messages/en.json' with { type: 'json' };
import { findUserByAddress } from '@/db/queries/users';
import { assignments } from '@/db/schema';
import { codeOf } from '../support/case-codes';
import { newSession, SESSION_COOKIE } from '../support/people';
import { shared } from './at-questions';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { makeCall, primePressureLow, takeReading, weakLiftPump, writeFinding } from './learner';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';

const { editor } = messages.sets;
const code = codeOf('lift-pump-weak', 800);
const NAMES = ['Ada Moor', 'Bo Elm', 'Cy Fenn'] as const;

test.use({ as: null });

test('a class does a set: built, given, done by three, one late and one with more time, reviewed, exported, appealed', async ({
  page,
  browser,
}) => {
  test.slow();
  const instructor = await somebodyNew('instructor');
  const stranger = await somebodyNew('instructor');
  await signInNew(page, instructor);

  await classFromCsv(page);
  const setId = await buildSet(page);
  const assignmentId = await give(page, setId);
  await giveMoreTime(page, assignmentId, NAMES[1]);

  const [ada, bo, cy] = await Promise.all(NAMES.map((name) => learnerPage(browser, instructor, name)));
  if (!ada || !bo || !cy) throw new Error('A class of three');
  await doTurn(ada, assignmentId, true);
  await bo.goto(`/learn/assignments/${assignmentId}`);
  await expect(bo.getByText('12 of these minutes are yours on top', { exact: false })).toBeVisible();
  await doTurn(bo, assignmentId, false);
  // A week goes by, and the third comes late.
  await shared()
    .update(assignments)
    .set({ closesAt: new Date(Date.now() - 60_000 * 60) })
    .where(eq(assignments.id, assignmentId));
  await doTurn(cy, assignmentId, false);
  await expect(cy.getByText('It came late', { exact: false })).toBeVisible();

  await page.goto('/gradebook');
  const grid = page.getByRole('grid');
  const cellOf = (name: string) => grid.getByRole('row', { name: new RegExp(`^${name}`) }).getByRole('link');
  await expect(cellOf(NAMES[2])).toContainText('late');
  const before = Number(await cellOf(NAMES[0]).locator('span').first().textContent());
  await cellOf(NAMES[0]).click();
  await page
    .getByRole('row', { name: /^1 Case/ })
    .getByRole('link', { name: 'Look at it' })
    .click();
  const parts = page.getByRole('region', { name: 'Points by part' });
  const verdicts = parts.getByRole('listitem').filter({ has: page.getByRole('heading', { name: 'Verdicts' }) });
  await overrideWith(verdicts, '0');
  await page.goto('/gradebook');
  await expect
    .poll(async () => Number(await cellOf(NAMES[0]).locator('span').first().textContent()))
    .toBeLessThan(before);
  const file = await (await page.request.get('/gradebook/export')).text();
  for (const name of NAMES) expect(file).toContain(`${name},Tuesday,`);
  expect(file).toMatch(/Cy Fenn,Tuesday,[^\r]*,late/);
  await expectClean(page);

  await appeal(ada);
  await page.goto('/review/appeals');
  await expect(page.getByText('I read it twice.')).toBeVisible();
  await expectClean(page);

  await signInNew(page, stranger);
  for (const address of ['/sets', '/assignments', '/review', '/review/appeals', '/gradebook', '/gradebook/export']) {
    const told = await (await page.request.get(address)).text();
    for (const name of [...NAMES, 'Supply side on Tuesday']) expect(told, address).not.toContain(name);
  }
  for (const address of [`/sets/${setId}`, `/assignments/${assignmentId}`, `/assignments/${assignmentId}/live`])
    expect((await page.request.get(address)).status(), address).toBe(404);
});

async function classFromCsv(page: Page): Promise<void> {
  await page.goto('/classes');
  await page.getByLabel('Name').fill('Tuesday');
  await page.getByRole('button', { name: messages.classes.add }).click();
  await page.waitForURL(/\/classes\/\w+$/);
  await page.goto('/people/import');
  const rows = NAMES.map((name) => `${name},,${signInOf(name)},,Tuesday`);
  await page.getByLabel(messages.people.paste).fill(['name,email,user name,roles,class', ...rows].join('\n'));
  await page.getByRole('button', { name: messages.people.preview }).click();
  await page.getByRole('button', { name: 'Add these 3 people' }).click();
  await expect(page.getByRole('heading', { name: '3 people are in' })).toBeVisible();
}

async function buildSet(page: Page): Promise<string> {
  await page.goto('/sets/new');
  const button = (name: string) => page.getByRole('button', { name, exact: true });
  await page.getByRole('textbox', { name: editor.title, exact: true }).fill('Supply side on Tuesday');
  await button(editor.add.case).click();
  await page.getByRole('textbox', { name: editor.code, exact: true }).fill(code);
  await button(editor.add.questions).click();
  await page.getByRole('combobox', { name: editor.topic, exact: true }).selectOption('filtration');
  await page.getByRole('combobox', { name: editor.kind, exact: true }).selectOption('judge');
  await button(editor.create).click();
  await page.waitForURL(/\/sets\/[0-9a-f]{20}$/);
  return page.url().split('/').at(-1) ?? '';
}

async function give(page: Page, setId: string): Promise<string> {
  await page.goto(`/sets/${setId}`);
  await page.getByRole('link', { name: messages.sets.acts.give }).click();
  await page.getByLabel('Opens').fill(localTime(-2));
  await page.getByLabel('Closes').fill(localTime(24));
  await page.getByRole('checkbox', { name: 'Tuesday' }).check();
  await page.getByLabel('Kind').selectOption('practice');
  await page.getByLabel('Time limit in minutes').fill('60');
  await page.getByLabel('Late work').selectOption('taken');
  await page.getByRole('button', { name: 'Give it', exact: true }).click();
  await page.waitForURL(/\/assignments\/\w{20}$/);
  return page.url().split('/').at(-1) ?? '';
}

async function giveMoreTime(page: Page, assignmentId: string, name: string): Promise<void> {
  await page.goto(`/assignments/${assignmentId}`);
  const row = page.getByRole('row', { name: new RegExp(`^${name}`) });
  await row.getByLabel(/^Extra time of/).fill('20');
  await row.getByRole('button', { name: 'Store' }).click();
  await expect(page.getByText('Stored.')).toBeVisible();
}

/** Begins a turn and hands it in; with its case worked, where wished. */
async function doTurn(page: Page, assignmentId: string, worked: boolean): Promise<void> {
  await page.goto(`/learn/assignments/${assignmentId}`);
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.waitForURL(/\/learn\/turns\/\w+$/);
  const turn = page.url();
  if (worked) {
    await page.getByRole('button', { name: 'Open case 1' }).click();
    await page.waitForURL(/\/learn\/cases\/\w+/);
    await takeReading(page, primePressureLow.hookUp);
    await writeFinding(page, primePressureLow.finding);
    await makeCall(page, weakLiftPump);
    await page.goto(turn);
  }
  await page.getByRole('button', { name: 'Hand in this turn' }).click();
  await expect(page.getByText(/\d of 100/).first()).toBeVisible();
}

async function overrideWith(part: Locator, points: string): Promise<void> {
  await part.getByText('Give other points').click();
  await part.getByLabel(/^Points, 0 to/).fill(points);
  await part.getByLabel('Reason, which the learner reads').fill('The gauge was read at idle.');
  await part.getByRole('button', { name: 'Give these points' }).click();
  await expect(part.getByText(`counts ${points} of`)).toBeVisible();
}

async function appeal(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Look at task 1' }).click();
  const told = page.getByRole('region', { name: 'From a person' });
  await expect(told).toContainText('The gauge was read at idle.');
  await expect(told).toContainText(/Counts: \d+ of 100\. Computed: \d+\./);
  await told.getByText('Ask for it to be looked at again').click();
  await told.getByLabel('What should be looked at').fill('I read it twice.');
  await told.getByRole('button', { name: 'Send it' }).click();
  await expect(told.getByRole('region')).toContainText('Open · to be answered by');
  await expectClean(page);
}

/** A browser of somebody of the class. */
async function learnerPage(browser: Browser, { organizationId }: Somebody, name: string): Promise<Page> {
  const user = await findUserByAddress(shared(), `${signInOf(name)}@${organizationId}.invalid`);
  if (!user) throw new Error(`${name} was not imported`);
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  const value = await newSession(shared(), user.id, organizationId);
  await context.addCookies([{ name: SESSION_COOKIE, value, domain: '127.0.0.1', path: '/' }]);
  return context.newPage();
}

function signInOf(name: string): string {
  return name.split(' ')[0]?.toLowerCase() ?? '';
}

/** As a field for a time takes it, UTC, hours from now. */
function localTime(hours: number): string {
  return new Date(Date.now() + hours * 3_600_000).toISOString().slice(0, 16);
}
