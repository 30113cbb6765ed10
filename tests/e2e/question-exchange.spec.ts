import { randomBytes } from 'node:crypto';
import type { Page } from '@playwright/test';
import { unzipSync } from 'fflate';
import sharp from 'sharp';
import messages from '@/content/messages/en.json' with { type: 'json' };
import type { Db } from '@/db/client';
import { findPicture } from '@/db/queries/pictures';
import { addingDraft, addingWrittenQuestion, listVersions, listWrittenQuestions } from '@/db/queries/written-questions';
import { together } from '@/db/together';
import type { WrittenQuestion } from '@/lib/questions/written/written-question';
import { itemOf, manifestOf, packageOf, packed, zipOf } from '../support/packages';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';
import { aWrittenQuestion } from '../support/written-questions';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { expectNoOverflow } from './no-overflow';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';

// What is refused is answered as such, and the browser tells of it.
test.use({ as: null, forgiven: /status of 40[04]/ });

const words = messages.exchange;

let db: Db;
let instructor: Somebody;

test.beforeAll(() => {
  db = openPlace(placeFor(SHARED_PORT));
});

test.beforeEach(async ({ page }) => {
  instructor = await somebodyNew('instructor');
  await signInNew(page, instructor);
});

/** A draft of somebody's. */
async function add({ id: writtenBy, organizationId }: Somebody, body: WrittenQuestion): Promise<string> {
  const [id, at] = [randomBytes(10).toString('hex'), new Date()];
  await together(db, [
    addingWrittenQuestion(db, { id, organizationId, createdBy: writtenBy, createdAt: at }),
    addingDraft(db, { id: randomBytes(10).toString('hex'), questionId: id, number: 1, body, writtenBy, at }),
  ]);
  return id;
}

const kept = () => listWrittenQuestions(db, instructor.organizationId, {}, 50);

async function give(page: Page, name: string, file: Uint8Array | string): Promise<void> {
  await page.goto('/questions/exchange');
  await page
    .getByLabel(words.file)
    .setInputFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(file) });
  await page.getByRole('button', { name: words.preview }).click();
}

const rows = (page: Page) => page.getByRole('region', { name: words.importTitle }).getByRole('row');

test('an instructor finds the page, exports, and brings the same in again as drafts', async ({ page }) => {
  await add(instructor, aWrittenQuestion('choice', { title: 'Which gauge' }));
  await add(instructor, aWrittenQuestion('point', { title: 'Where the pump is' }));
  await page.goto('/questions');
  await page.getByRole('link', { name: messages.written.exchange }).click();
  await page.waitForURL('/questions/exchange');
  await page.getByLabel(words.which).selectOption('newest');
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: words.exportPackage }).click();
  const path = await (await download).path();
  await page.getByLabel(words.file).setInputFiles(path);
  await page.getByRole('button', { name: words.preview }).click();
  await expect(page.getByText('2 questions can be taken.')).toBeVisible();
  await expect(rows(page)).toHaveCount(3);
  expect(await kept()).toHaveLength(2);
  await page.getByRole('button', { name: 'Import 2 questions as drafts' }).click();
  await expect(page.getByText('2 questions are in, as drafts of yours.')).toBeVisible();
  const all = await kept();
  expect(all.map(({ title, state }) => `${title} ${state}`).sort()).toEqual(
    ['Where the pump is draft', 'Where the pump is draft', 'Which gauge draft', 'Which gauge draft'].sort(),
  );
  const bodies = await Promise.all(
    all.map(async ({ questionId }) => JSON.stringify((await listVersions(db, questionId))[0]?.body)),
  );
  expect(new Set(bodies).size).toBe(2);
});

test('a CSV file says of each row that is wrong its line, its column and what was expected', async ({ page }) => {
  const csv =
    'title,form,stem,topics,explanation,option_1,option_2,right\n"Two\nlines",choice,What?,filtration,So.,this,that,2\nBad,choice,What?,filtration,So.,this,this,9';
  await give(page, 'questions.csv', csv);
  await expect(page.getByText('1 question can be taken, 1 cannot.')).toBeVisible();
  await expect(page.getByRole('row', { name: /Line 4 Bad not taken/ })).toContainText('option_2: This says the same');
  await expect(page.getByRole('row', { name: /Line 4/ })).toContainText('right: There is no “9”');
  await page.getByRole('button', { name: 'Import 1 question as a draft' }).click();
  await expect(page.getByText('1 question is in, as a draft of yours.')).toBeVisible();
  expect((await kept()).map(({ title }) => title)).toEqual(['Two\nlines']);
});

test('pictures come in drawn anew, and are served to the organisation alone', async ({ page, browser }) => {
  const png = await sharp({ create: { width: 80, height: 60, channels: 3, background: '#888' } })
    .png()
    .toBuffer();
  await give(page, 'questions.zip', await packed([aWrittenQuestion('spot')], async () => png));
  await page.getByRole('button', { name: 'Import 1 question as a draft' }).click();
  await expect(page.getByText('1 question is in')).toBeVisible();
  const [question] = await kept();
  const [version] = await listVersions(db, question?.questionId ?? '');
  const body = version?.body.body;
  if (body?.form !== 'spot') throw new Error('no picture');
  expect(body.picture).toMatchObject({ width: 80, height: 60 });
  expect((await findPicture(db, body.picture.id))?.organizationId).toBe(instructor.organizationId);
  const answer = await page.request.get(`/pictures/${body.picture.id}`);
  expect([answer.status(), answer.headers()['content-type']]).toEqual([200, 'image/webp']);
  const other = await browser.newPage();
  await signInNew(other, await somebodyNew('instructor'));
  expect((await other.request.get(`/pictures/${body.picture.id}`)).status()).toBe(404);
  await other.close();
});

const item = itemOf({ declaration: '', body: '<p>x</p>' });
const entities = '<!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/passwd">]>';

for (const [what, file, told] of [
  ['a way out of the package', zipOf({ '../../up.xml': item }), words.refusals['bad-path']],
  ['a zip bomb', zipOf({ 'big.bin': new Uint8Array(8 * 2 ** 20) }), 'big.bin'],
  [
    'a manifest with entities',
    zipOf({ 'imsmanifest.xml': entities + manifestOf('one.xml') }),
    'declares a document type',
  ],
  ['what is no package', 'PK and no more', words.refusals['not-a-zip']],
  ['a CSV file without its columns', 'a,b\n1,2', words.csvProblems['no-columns']],
] as const)
  test(`${what} is refused with a clear line, and nothing is kept`, async ({ page }) => {
    await give(page, 'file', file);
    await expect(page.getByRole('alert').filter({ hasText: told })).toBeVisible();
    await expect(page.getByRole('button', { name: /^Import \d/ })).toHaveCount(0);
    expect(await kept()).toEqual([]);
  });

test('an item with entities is not taken, by file and reason', async ({ page }) => {
  await give(page, 'file.zip', packageOf(item.replace('<qti-assessment-item', `${entities}<qti-assessment-item`)));
  await expect(page.getByRole('row', { name: /items\/one\.xml/ })).toContainText('declares a document type');
  await expect(page.getByRole('button', { name: /^Import \d/ })).toHaveCount(0);
});

test('an import that is not what the preview showed keeps nothing', async ({ page }) => {
  const data = Buffer.from(await packed([aWrittenQuestion()]));
  const headers = { Origin: `http://127.0.0.1:${SHARED_PORT}` };
  for (const asked of ['topic=filtration&good=2', 'topic=filtration', 'topic=no-such&good=1']) {
    const answer = await page.request.post(`/questions/exchange/import?${asked}`, { data, headers });
    expect(answer.status()).toBe(400);
  }
  expect(await kept()).toEqual([]);
});

test('an export holds what is the organisation’s own and nothing else', async ({ page }) => {
  const stranger = await somebodyNew('instructor');
  await add(stranger, aWrittenQuestion('choice', { title: 'Somebody else’s secret' }));
  const own = await add(instructor, aWrittenQuestion('choice', { title: 'Our own' }));
  const zip = await page.request.get('/questions/exchange/package?which=newest');
  const files = unzipSync(new Uint8Array(await zip.body()));
  expect(Object.keys(files).sort()).toEqual(['imsmanifest.xml', `items/q-${own}.xml`, `source/q-${own}.json`].sort());
  const csv = await (await page.request.get('/questions/exchange/csv?which=newest')).text();
  expect(csv).toContain('Our own');
  expect(csv).not.toContain('secret');
  expect(await (await page.request.get('/questions/exchange/csv')).text()).not.toContain('Our own');
});

test('a learner gets neither page nor file, and can bring nothing in', async ({ page }) => {
  await signInNew(page, await somebodyNew('learner', instructor.organizationId));
  for (const address of ['', '/package', '/csv'])
    expect((await page.request.get(`/questions/exchange${address}`)).status(), address).toBe(404);
  const headers = { Origin: `http://127.0.0.1:${SHARED_PORT}` };
  for (const address of ['/preview', '/import']) {
    const asked = `/questions/exchange${address}?topic=filtration&good=1`;
    const answer = await page.request.post(asked, { data: Buffer.from(await packed([aWrittenQuestion()])), headers });
    expect(answer.status(), address).toBe(404);
  }
  expect(await kept()).toEqual([]);
});

test('axe finds nothing serious, and nothing sticks out on a phone', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await give(
    page,
    'questions.zip',
    await packed([aWrittenQuestion('choice', { title: 'x'.repeat(300) }), aWrittenQuestion('numbers')]),
  );
  await expect(page.getByText('2 questions can be taken.')).toBeVisible();
  await expectNoOverflow(page);
  await expectClean(page);
});
