import type { Page } from '@playwright/test';
import { eq } from 'drizzle-orm';
import { newItem } from '@/app/sets/editor/draft';
import { loadCatalogue } from '@/content/load';
import messages from '@/content/messages/en.json' with { type: 'json' };
import type { Db } from '@/db/client';
import { listLogEntries } from '@/db/queries/log-entries';
import { findNewestVersion, freezingVersion, listSetVersions } from '@/db/queries/sets';
import { addingDraft, addingWrittenQuestion } from '@/db/queries/written-questions';
import { writtenVersions } from '@/db/schema';
import { together } from '@/db/together';
import type { SetBody } from '@/lib/sets/set-body';
import { callAction } from '../support/call-action';
import { codeOf } from '../support/case-codes';
import { newSession } from '../support/people';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';
import { addSet, aSetBody } from '../support/teaching-rows';
import { aWrittenQuestion } from '../support/written-questions';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { expectNoOverflow } from './no-overflow';
import { expectNotThere } from './not-yours-alike';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';

test.use({ as: null });

const origin = `http://127.0.0.1:${SHARED_PORT}`;
const { sets: words, written, debrief, problems } = messages;
const { editor, acts } = words;
const catalogue = loadCatalogue();

let db: Db;
let builder: Somebody;

test.beforeAll(() => {
  db = openPlace(placeFor(SHARED_PORT));
});

test.beforeEach(async ({ page }) => {
  builder = await somebodyNew('instructor');
  await signInNew(page, builder);
});

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const box = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const rows = (page: Page) => page.locator('form ol > li');
const made = (page: Page) => page.getByRole('region', { name: editor.holding });
const example = (page: Page) => page.getByRole('region', { name: /^An example/ });
const rowButton = (page: Page, name: string, n: number) => button(page, `${name}: Item ${n}`);

let count = 0;
/** A set of the organisation's, as if it had been built on the screen. */
async function addSetOf(
  person: Somebody,
  { body = aSetBody(), shared = false }: { body?: SetBody; shared?: boolean } = {},
) {
  const id = `set${Date.now().toString(36)}${++count}`;
  return addSet(db, { id, organizationId: builder.organizationId, createdBy: person.id, body, shared });
}

async function bodyOf(setId: string): Promise<SetBody> {
  const version = await findNewestVersion(db, setId);
  if (!version) throw new Error('No such set');
  return version.body;
}

test('a set is built from all four kinds of items by keyboard, told what can never be met, and kept', async ({
  page,
}) => {
  test.slow();
  await page.goto('/sets');
  await page.getByRole('link', { name: words.new }).click();
  await box(page, editor.title).fill('Supply side on Tuesday');

  await button(page, editor.add.cases).press('Enter');
  await expect(box(page, editor.count)).toBeFocused();
  await box(page, editor.count).fill('2');
  await page.getByRole('checkbox', { name: 'Filtration' }).press('Space');
  await page.getByLabel(editor.howMany).selectOption('double');
  await expect(page.getByText(words.faults.never.faults)).toBeVisible();
  await page.getByLabel(editor.howMany).selectOption('single');
  await expect(page.getByText(words.faults.never.faults)).toHaveCount(0);
  await rowButton(page, editor.close, 1).press('Enter');

  await button(page, editor.add.questions).press('Enter');
  await page.getByRole('combobox', { name: editor.topic, exact: true }).selectOption('filtration');
  await page.getByRole('combobox', { name: editor.kind, exact: true }).selectOption('judge');
  await rowButton(page, editor.close, 2).press('Enter');

  await button(page, editor.add.case).press('Enter');
  await box(page, editor.code).fill('ABC-DEFG-HJ');
  await expect(page.getByText(words.faults['check-symbols'])).toBeVisible();
  await box(page, editor.code).fill(codeOf('lift-pump-weak', 800));
  await expect(page.getByText(words.faults['check-symbols'])).toHaveCount(0);
  await rowButton(page, editor.close, 3).press('Enter');

  // Neither what is not chosen yet nor what can never be drawn is kept.
  await button(page, editor.add.written).press('Enter');
  await button(page, editor.create).click();
  await expect(page.getByText(problems['set-wrong'])).toBeVisible();
  await rowButton(page, written.editor.remove, 4).press('Enter');
  await expect(rowButton(page, editor.edit, 3)).toBeFocused();

  await rowButton(page, written.editor.down, 1).press('Enter');
  await expect(rows(page).nth(1)).toContainText('Cases × 2');
  await expect(rowButton(page, written.editor.down, 2)).toBeFocused();

  await page.getByLabel(editor.blueprint).selectOption('low-pressure-side');
  await expect(made(page).getByRole('row', { name: /^▲ Filtration 3 2–5|^Filtration 3 2–5/ })).toBeVisible();
  await expect(made(page)).toContainText(words.holding.gaps);
  await expectClean(page);

  await button(page, editor.create).click();
  await page.waitForURL(/\/sets\/[0-9a-f]{20}$/);
  const setId = page.url().split('/').at(-1) ?? '';
  expect(await bodyOf(setId)).toEqual({
    title: 'Supply side on Tuesday',
    note: '',
    blueprint: 'low-pressure-side',
    items: [
      { id: 'i2', kind: 'questions', count: 1, topic: 'filtration', questionKind: 'judge' },
      { id: 'i1', kind: 'cases', count: 2, wishes: { topics: ['filtration'], faults: 'single' } },
      { id: 'i3', kind: 'case', code: codeOf('lift-pump-weak', 800) },
    ],
  });
  const told = (await listLogEntries(db, builder.organizationId, {}, 20)).filter(
    ({ details }) => details.set === setId,
  );
  expect(told.map(({ event }) => event)).toEqual(['set-made']);
});

test('an example of a task is shown as a learner sees it, and with its answer only when that is asked for', async ({
  page,
}) => {
  test.slow();
  const weak = catalogue.causes.get('lift-pump-weak')?.text.en.name ?? 'none';
  const { setId } = await addSetOf(builder, {
    body: aSetBody({
      items: [
        { id: 'a', kind: 'case', code: codeOf('lift-pump-weak', 800) },
        { id: 'b', kind: 'questions', count: 1, questionKind: 'judge', topic: 'filtration' },
      ],
    }),
  });
  await page.goto(`/sets/${setId}`);
  await rowButton(page, editor.preview, 1).click();
  await expect(example(page)).toContainText(messages.case.codesTitle);
  await expect(example(page)).not.toContainText(weak);
  await button(page, editor.withAnswer).click();
  await expect(example(page)).toContainText(weak);
  await expect(example(page)).toContainText(debrief.rightRepairs);
  await rowButton(page, editor.preview, 2).click();
  await expect(example(page).getByRole('radio').first()).toBeVisible();
  await button(page, editor.withAnswer).click();
  await expect(example(page)).toContainText(messages.questions.marked.key);
  await expectClean(page);
});

test('an assigned version stays; saving makes the next, and what somebody else saved is not written over', async ({
  page,
}) => {
  const { setId, versionId } = await addSetOf(builder);
  freezingVersion(db, versionId, new Date()).run();
  await page.goto(`/sets/${setId}`);
  await expect(page.getByText(words.frozenNewest)).toBeVisible();
  await box(page, editor.title).fill('Another title');
  await button(page, editor.save).click();
  await expect(page.getByRole('link', { name: 'Version 1' })).toBeVisible();
  await box(page, editor.title).fill('A third title');
  await button(page, editor.save).click();
  await expect(page.getByRole('heading', { level: 1, name: 'A third title' })).toBeVisible();
  expect((await listSetVersions(db, setId)).map(({ body }) => body.title)).toEqual(['A third title', 'Supply side']);

  const cookie = await newSession(db, builder.id, builder.organizationId);
  const set = JSON.stringify({ title: 'Late', note: '', blueprint: '', items: [] });
  const { text } = await callAction({ origin, cookie }, `/sets/${setId}`, 'saveSet', { setId, versionId, set });
  expect(text).toContain(problems['set-moved']);
  expect((await bodyOf(setId)).title).toBe('A third title');
  await page.getByRole('link', { name: 'Version 1' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Supply side' })).toBeVisible();
  await expect(button(page, editor.save)).toHaveCount(0);
});

test('a set is shared, copied, archived and restored', async ({ page }) => {
  const { setId } = await addSetOf(builder, { body: aSetBody({ title: 'Ours' }) });
  await page.goto(`/sets/${setId}`);
  await button(page, acts.share).click();
  await expect(page.getByText(words.isShared)).toBeVisible();
  await button(page, acts.archive).click();
  await expect(page.getByText(words.isArchived)).toBeVisible();
  await page.goto('/sets');
  await expect(page.getByRole('link', { name: 'Ours' })).toHaveCount(0);
  await page.getByRole('link', { name: words.archiveTitle }).click();
  await page.getByRole('link', { name: 'Ours' }).click();
  await button(page, acts.restore).click();
  await expect(button(page, editor.save)).toBeVisible();
  await button(page, acts.unshare).click();
  await expect(page.getByText(words.isUnshared)).toBeVisible();
  await button(page, acts.duplicate).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Copy of Ours' })).toBeVisible();
  expect(page.url()).not.toContain(setId);
});

test('a colleague’s set is not there until it is shared; administrators see it', async ({ page, request }) => {
  const colleague = await somebodyNew('instructor', builder.organizationId);
  const { setId } = await addSetOf(colleague, { body: aSetBody({ title: 'Hers' }) });
  await page.goto('/sets');
  await expect(page.getByRole('link', { name: 'Hers' })).toHaveCount(0);
  await expectNotThere(request, setId, (id) => `/sets/${id}`);
  const cookie = await newSession(db, builder.id, builder.organizationId);
  for (const action of ['saveSet', 'shareSet', 'archiveSet', 'duplicateSet']) {
    const fields = { setId, key: 'a'.repeat(32), versionId: `${setId}-1`, set: '{}' };
    const { text } = await callAction({ origin, cookie }, '/sets', action, fields);
    expect(text, action).toContain(problems['not-there']);
  }
  const administrator = await somebodyNew('administrator', builder.organizationId);
  await signInNew(page, administrator);
  await page.goto('/sets');
  await expect(page.getByRole('link', { name: 'Hers' })).toBeVisible();
});

test('what can never be drawn is not kept, nor another organisation’s question', async () => {
  const { setId, versionId } = await addSetOf(builder);
  const stranger = await somebodyNew('instructor');
  const at = new Date();
  const theirs = { organizationId: stranger.organizationId, createdBy: stranger.id, createdAt: at };
  const questionId = `q${setId}`;
  await together(db, [
    addingWrittenQuestion(db, { id: questionId, ...theirs }),
    addingDraft(db, {
      id: `${questionId}-1`,
      questionId,
      number: 1,
      body: aWrittenQuestion(),
      writtenBy: stranger.id,
      at,
    }),
  ]);
  await db.update(writtenVersions).set({ state: 'live' }).where(eq(writtenVersions.questionId, questionId));
  const cookie = await newSession(db, builder.id, builder.organizationId);
  const save = async (item: object) => {
    const set = JSON.stringify({ title: 'Changed', note: '', blueprint: '', items: [item] });
    return (await callAction({ origin, cookie }, `/sets/${setId}`, 'saveSet', { setId, versionId, set })).text;
  };
  expect(await save({ id: 'a', kind: 'written', questionId })).toContain(words.faults['not-live']);
  const double = { ...newItem('cases', 'a'), faults: 'double' };
  expect(await save(double)).toContain(words.faults.never.faults);
  expect((await bodyOf(setId)).title).toBe('Supply side');
  expect(await save({ ...double, faults: '' })).toContain('"saved":true');
  expect((await bodyOf(setId)).title).toBe('Changed');
});

test('the list, a ready set and its editor fit a phone and are clean', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await addSetOf(builder, { body: aSetBody({ title: 'Supplysideandeverythingelse'.repeat(4) }) });
  await page.goto('/sets');
  await expectNoOverflow(page);
  await expectClean(page);
  await page.getByRole('link', { name: /^Mixed sign-off/ }).click();
  await expect(rows(page)).toHaveCount(19);
  await expect(made(page)).toContainText(words.holding.noGaps);
  await rowButton(page, editor.edit, 14).click();
  await expectNoOverflow(page);
  await expectClean(page);
});
