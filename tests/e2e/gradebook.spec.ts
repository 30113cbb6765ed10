import { eq } from 'drizzle-orm';
import { listLogEntries } from '@/db/queries/log-entries';
import { assignments, turnResults, turns } from '@/db/schema';
import { fillBook } from '../support/book-rows';
import { shared } from './at-questions';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { expectNoOverflow } from './no-overflow';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';

let instructor: Somebody;

test.beforeAll(async () => {
  instructor = await somebodyNew('instructor');
  await fillBook(shared(), {
    organizationId: instructor.organizationId,
    createdBy: instructor.id,
    learners: 60,
    assignments: 24,
  });
});

test.beforeEach(({ page }) => signInNew(page, instructor));

test('the gradebook is gone through by keys, sorted, narrowed down, and opens what somebody did', async ({ page }) => {
  await page.goto('/gradebook');
  const grid = page.getByRole('grid', { name: 'People and assignments' });
  await expect(grid).toHaveAttribute('aria-rowcount', '61');
  await grid.focus();
  const active = () =>
    grid.evaluate(
      (element) => document.getElementById(element.getAttribute('aria-activedescendant') ?? '')?.textContent,
    );
  expect(await active()).toBe('Ada Invented-0');
  await page.keyboard.press('Control+End');
  await expect.poll(active).toMatch(/^(\d+|missed)/);
  await expect(grid).toHaveAttribute('aria-activedescendant', 'cell-60-25');
  await page.keyboard.press('Home');
  expect(await active()).toBe('Juno Invented-59');
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Enter');
  await expect(grid.getByRole('columnheader', { name: 'Mean' })).toHaveAttribute('aria-sort', 'descending');
  await expect(page).toHaveURL(/sort=mean&down=true/);
  const means = await grid.locator('tbody td:nth-child(2)').allInnerTexts();
  expect(means.map(Number)).toEqual(means.map(Number).sort((a, b) => b - a));

  await page.getByRole('searchbox', { name: 'Name' }).fill('hana invented-17');
  await expect(grid).toHaveAttribute('aria-rowcount', '2');
  await page.getByRole('searchbox', { name: 'Name' }).fill('hana');
  await expect(grid).toHaveAttribute('aria-rowcount', '7');
  await page.getByLabel('With something that is').selectOption('missed');
  await page.reload();
  await expect(page.getByRole('searchbox', { name: 'Name' })).toHaveValue('hana');
  await page.goto('/gradebook');
  await page.getByRole('link', { name: /^\d+$/ }).first().click();
  await expect(page.getByRole('heading', { name: 'Turn 1' })).toBeVisible();
  await expectClean(page);
});

test('what is looked at is what is exported and printed, and a spreadsheet computes none of it', async ({ page }) => {
  const [first] = await shared()
    .select()
    .from(assignments)
    .where(eq(assignments.organizationId, instructor.organizationId))
    .limit(1);
  await shared()
    .update(assignments)
    .set({ title: '=HYPERLINK("x")' })
    .where(eq(assignments.id, first?.id ?? ''));
  const answer = await page.request.get('/gradebook/export?name=hana&sort=mean&down=true');
  const lines = (await answer.text()).trim().split('\r\n');
  expect(lines).toHaveLength(7);
  expect(lines[0]).toContain(`"'=HYPERLINK`);
  expect(lines[0]).toMatch(/^person,classes,mean,/);
  // What tells a spreadsheet that it is UTF-8.
  expect((await answer.body()).subarray(0, 3)).toEqual(Buffer.from([0xef, 0xbb, 0xbf]));
  expect(lines[1]).toMatch(/^Hana Invented-\d+,The whole book,[\d.]+,/);
  const [logged] = await listLogEntries(shared(), instructor.organizationId, { event: 'gradebook-exported' }, 1);
  expect(logged).toMatchObject({ actorId: instructor.id, details: { count: 6 } });
  await page.goto('/gradebook/print?name=hana');
  await expect(page.getByRole('table')).toHaveCount(4);
  await expect(page.getByRole('table').first().getByRole('row')).toHaveCount(7);
});

test('another organisation’s people, assignments and turns look like none', async ({ page }) => {
  const stranger = await somebodyNew('instructor');
  const [turn] = await shared()
    .select()
    .from(turns)
    .where(eq(turns.organizationId, instructor.organizationId))
    .limit(1);
  await signInNew(page, stranger);
  await page.goto('/gradebook');
  await expect(page.getByText('No assignment has opened yet.')).toBeVisible();
  const query = new URLSearchParams({ person: turn?.learnerId ?? '', assignment: turn?.assignmentId ?? '' });
  const [theirs, none] = [
    await page.request.get(`/gradebook/turns?${query}`),
    await page.request.get('/gradebook/turns?person=a&assignment=b'),
  ];
  expect([theirs.status(), none.status()]).toEqual([404, 404]);
  expect(await (await page.request.get('/gradebook/export')).text()).not.toContain('Invented');
});

test('axe finds nothing serious, and on a phone nothing but the table itself scrolls sideways', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto('/gradebook');
  await expectNoOverflow(page);
  await expectClean(page);
  await page.goto('/gradebook/print');
  await expectNoOverflow(page);
});

test('while an assignment is marked without names, no cell ties a name to its marks', async ({ page }) => {
  const own = eq(assignments.organizationId, instructor.organizationId);
  const [one] = await shared().select().from(assignments).where(own).limit(1);
  if (!one) throw new Error('No assignment');
  const ofIt = eq(assignments.id, one.id);
  const closesAt = new Date(Date.now() + 86_400_000);
  await shared()
    .update(assignments)
    .set({ title: 'Nameless', closesAt, rules: { ...one.rules, anonymous: true } })
    .where(ofIt);
  const lines = await (await page.request.get('/gradebook/export')).text();
  const column = lines.split('\r\n')[0]?.split(',').indexOf('Nameless') ?? -1;
  const cells = lines
    .trim()
    .split('\r\n')
    .slice(1)
    .map((line) => line.split(',')[column]);
  expect(new Set(cells)).toEqual(new Set(['marked without names', 'not begun']));
  const [turn] = await shared().select().from(turns).where(eq(turns.assignmentId, one.id)).limit(1);
  await page.goto(`/gradebook/turns?${new URLSearchParams({ person: turn?.learnerId ?? '', assignment: one.id })}`);
  await expect(page.getByText('This assignment is marked without names.')).toBeVisible();
  await expect(page.getByText('of 100')).toHaveCount(0);
  await shared().update(assignments).set({ closesAt: one.closesAt }).where(ofIt);
  await page.reload();
  await expect(page.getByText('of 100')).toBeVisible();
  await shared().update(assignments).set(one).where(ofIt);
});

test('a turn whose marks are forgotten is worked out again when the book is opened', async ({ page }) => {
  const [turn] = await shared()
    .select()
    .from(turns)
    .where(eq(turns.organizationId, instructor.organizationId))
    .limit(1);
  const turnId = turn?.id ?? '';
  await shared().delete(turnResults).where(eq(turnResults.turnId, turnId));
  await page.goto('/gradebook');
  const [again] = await shared().select().from(turnResults).where(eq(turnResults.turnId, turnId));
  // Nothing was done in it: two tasks that earn nothing.
  expect(again).toMatchObject({ total: 0, waiting: 0 });
  expect(again?.tasks.map(({ place, kind, share }) => [place, kind, share])).toEqual([
    [1, 'case', 0],
    [2, 'question', 0],
  ]);
});
