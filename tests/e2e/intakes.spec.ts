import type { Browser, Page } from '@playwright/test';
import { eq } from 'drizzle-orm';
import messages from '@/content/messages/en.json' with { type: 'json' };
import { attempts, intakes, intakeTasks, poolTasks } from '@/db/schema';
import { shared } from './at-questions';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { wholeBothWays } from './heard';
import { expectNoOverflow } from './no-overflow';

const words = messages.intakes;
/** Names that stand in an answer only where something of the choice, the truth or a key does. */
const TELLING = /contenders|poolTaskId|callCorrect|expertRoute|"truth|tokenHash|difficulty\\?":-?\d/i;

/** On no page of the taker's; the export of what is kept on a person has it, since it is kept on them. */
const ACCOMMODATION = /extraTime/i;

test.use({ as: 'shopLead' });

test('a shop lead gives a check, a new hire does it, breaks off, comes back, and both see how it came out', async ({
  page,
  browser,
}) => {
  test.setTimeout(400_000);
  const { link, pin } = await give(page);
  const hire = await newcomer(browser);
  await hire.goto(link);
  await expect(hire.getByRole('heading', { name: words.one })).toBeVisible();
  await expect(hire.getByText(words.comes.notTold)).toBeVisible();
  await expectNoOverflow(hire);
  await hire.getByLabel(words.pin).fill('000000');
  await hire.getByRole('button', { name: words.begin }).click();
  await expect(hire.locator('#main').getByRole('alert')).toContainText(messages.problems['intake-pin-refused']);

  await begin(hire, link, pin, words.begin);
  await hire.getByRole('button', { name: words.goOn }).click();
  await hire.waitForURL(/\/learn\/(cases|sittings)\//);
  const first = hire.url();
  await expectNothingTold(hire);
  await expectNoOverflow(hire);
  await hire.context().close();

  const again = await newcomer(browser);
  await begin(again, link, pin, words.goOn);
  await again.getByRole('button', { name: words.goOn }).click();
  await again.waitForURL(/\/learn\/(cases|sittings)\//);
  expect(new URL(again.url()).pathname).toBe(new URL(first).pathname);
  await leaveQuestions(again);
  await expectNothingTold(again);

  const { id } = await theIntake();
  await page.goto(`/intakes/${id}`);
  await page.getByRole('button', { name: words.stop }).click();
  await expect(page.getByRole('heading', { name: words.choices })).toBeVisible();
  await expect(page.getByRole('columnheader', { name: words.colChance })).toBeVisible();
  await expect(page.getByText(words.replayed).first()).toBeVisible();
  await expect(page.getByText(words.notReplayed)).toHaveCount(0);
  await expect(page.getByText('Extra time: 25 % on top')).toBeVisible();
  await expectClean(page);

  await again.goto(`/learn/intakes/${id}`);
  await expect(again.getByRole('heading', { name: words.thanks })).toBeVisible();
  await expect(again.getByText(words.decided['not-enough-evidence']).first()).toBeVisible();
  for (const answer of await wholeBothWays(again.request, [`/learn/intakes/${id}`])) {
    expect(answer).not.toMatch(TELLING);
    expect(answer).not.toMatch(ACCOMMODATION);
  }
  await expectNoOverflow(again);
  await again.goto(link);
  await expect(again.getByRole('heading', { name: words.link.finished })).toBeVisible();
  await again.context().close();
});

test('a link that was taken back says so, and so does one that never was', async ({ page, browser }) => {
  const { link } = await give(page);
  const hire = await newcomer(browser);
  await page.goto('/intakes');
  await page.getByRole('button', { name: words.takeBack }).first().click();
  await expect(page.getByText(words.state['taken-back']).first()).toBeVisible();
  for (const address of [link, '/start/never-made']) {
    await hire.goto(address);
    await expect(hire.getByRole('heading', { name: words.link.dead })).toBeVisible();
    await expect(hire.getByLabel(words.pin)).toHaveCount(0);
  }
  await hire.context().close();
});

async function give(page: Page): Promise<{ link: string; pin: string }> {
  await page.goto('/intakes/new');
  await page.getByLabel(words.newName).fill('Mara Quist');
  await page.getByLabel(words.extraTime).selectOption('0.25');
  await page.getByRole('button', { name: words.give }).click();
  const box = page.locator('input[readonly]');
  await expect(box).toBeVisible();
  const text = await box.inputValue();
  const [, path = ''] = /(\/start\/[\w-]+)/.exec(text) ?? [];
  const [, pin = ''] = /PIN (\d+)/.exec(text) ?? [];
  expect(text).toContain('mara-quist');
  return { link: path, pin };
}

async function newcomer(browser: Browser): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 390, height: 800 }, baseURL: 'http://127.0.0.1:3131' });
  return context.newPage();
}

async function begin(hire: Page, link: string, pin: string, button: string): Promise<void> {
  await hire.goto(link);
  await hire.getByLabel(words.pin).fill(pin);
  await hire.getByRole('button', { name: button }).click();
  await hire.waitForURL(/\/learn\/intakes\//);
}

/** Leaves questions open, a few of them, until a case comes. */
async function leaveQuestions(hire: Page): Promise<void> {
  for (let left = 0; left < 3 && hire.url().includes('/sittings/'); left++) {
    const before = hire.url();
    await hire.getByRole('button', { name: words.next }).click();
    await hire.waitForURL((url) => url.href !== before);
  }
}

/** The newest that was begun. */
async function theIntake() {
  const rows = await shared().select().from(intakes);
  const begun = rows.filter(({ startedAt, finishedAt }) => startedAt && !finishedAt);
  const intake = begun.at(-1);
  if (!intake) throw new Error('No check is under way');
  return intake;
}

/** What the taker is sent: nothing of the truth, the key, the case's code, how hard it is, what else stood at the front. */
async function expectNothingTold(hire: Page): Promise<void> {
  const { id, sittingId } = await theIntake();
  const given = await shared().select().from(intakeTasks).where(eq(intakeTasks.intakeId, id));
  const cases = given.flatMap(({ attemptId }) => (attemptId ? [attemptId] : []));
  const paths = [
    ...cases.flatMap((attempt) => [`/learn/cases/${attempt}`, `/learn/cases/${attempt}/debrief`]),
    ...[`/learn/sittings/${sittingId}`, `/learn/intakes/${id}`, '/learn', '/learn/questions', '/learn/progress'],
  ];
  const exported = ['/me/export/json', '/me/export/csv'];
  const codes = await codesOf(cases);
  const shown = await wholeBothWays(hire.request, paths);
  for (const answer of shown) expect(answer).not.toMatch(ACCOMMODATION);
  for (const answer of [...shown, ...(await wholeBothWays(hire.request, exported))]) {
    expect(answer).not.toMatch(TELLING);
    for (const code of codes) expect(answer).not.toContain(code);
    for (const { poolTaskId, choice } of given) {
      expect(answer).not.toContain(poolTaskId);
      for (const contender of choice.contenders) expect(answer).not.toContain(contender.poolTaskId);
    }
  }
}

async function codesOf(attemptIds: readonly string[]): Promise<string[]> {
  const rows = await shared().select({ id: attempts.id, code: attempts.caseCode }).from(attempts);
  const pool = await shared().select({ code: poolTasks.caseCode }).from(poolTasks);
  const own = rows.filter(({ id }) => attemptIds.includes(id)).map(({ code }) => code);
  return [...own, ...pool.flatMap(({ code }) => code ?? [])];
}
