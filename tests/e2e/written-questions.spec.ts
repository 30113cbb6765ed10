import type { Page } from '@playwright/test';
import sharp from 'sharp';
import messages from '@/content/messages/en.json' with { type: 'json' };
import type { Db } from '@/db/client';
import { listLogEntries } from '@/db/queries/log-entries';
import { listManualMarks } from '@/db/queries/manual-marks';
import {
  addingDraft,
  addingWrittenQuestion,
  listLiveVersions,
  listVersions,
  listWrittenQuestions,
} from '@/db/queries/written-questions';
import { together } from '@/db/together';
import type { WrittenQuestion } from '@/lib/questions/written/written-question';
import { addDrillOn } from '../support/asked-written';
import { callAction } from '../support/call-action';
import { newSession, SESSION_COOKIE } from '../support/people';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';
import { aWrittenQuestion } from '../support/written-questions';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { expectNotThere } from './not-yours-alike';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';

test.use({ as: null });

const origin = `http://127.0.0.1:${SHARED_PORT}`;
const { written: words, problems } = messages;
const { editor } = words;

let db: Db;
let writer: Somebody;

test.beforeAll(() => {
  db = openPlace(placeFor(SHARED_PORT));
});

test.beforeEach(async ({ page }) => {
  writer = await somebodyNew('instructor');
  await signInNew(page, writer);
});

const colleague = (role = 'instructor') => somebodyNew(role, writer.organizationId);
const questions = () => listWrittenQuestions(db, writer.organizationId, {}, 50);
const box = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const preview = (page: Page) => page.getByRole('region', { name: words.previewTitle });

/** Puts a draft of the writer's into the database, as if it had been written on the screen. */
async function addDraft(body: WrittenQuestion = aWrittenQuestion()): Promise<string> {
  const questionId = crypto.randomUUID().replaceAll('-', '').slice(0, 20);
  const { id: writtenBy, organizationId } = writer;
  const at = new Date();
  await together(db, [
    addingWrittenQuestion(db, { id: questionId, organizationId, createdBy: writtenBy, createdAt: at }),
    addingDraft(db, { id: `${questionId}-1`, questionId, number: 1, body, writtenBy, at }),
  ]);
  return questionId;
}

async function fillTexts(page: Page): Promise<void> {
  await box(page, editor.title).fill('Which gauge');
  await box(page, editor.stem).fill('Which gauge for **the lift pump**? <script>alert(1)</script>');
  await box(page, editor.explanation).fill('The limit lies within its scale.');
  await page.getByRole('checkbox', { name: 'Filtration' }).check();
}

test('a question is written, previewed, reviewed by a second person, live, and in a new version again', async ({
  page,
}) => {
  const reviewer = await colleague();
  await page.goto('/questions');
  await page.getByRole('link', { name: words.write }).click();
  await page.getByRole('link', { name: words.forms.choice }).click();
  await fillTexts(page);
  for (const [index, text] of ['A dial, 0–30 psi', 'A dial, 0–300 psi', 'A stop-watch'].entries())
    await box(page, `Option ${index + 1}`).fill(text);
  await page.getByRole('radio', { name: 'Option 1 is right' }).check();
  await button(page, editor.preview).click();
  await expect(preview(page).getByRole('radio')).toHaveCount(3);
  await expect(preview(page).locator('strong')).toHaveText('the lift pump');
  await expect(preview(page).locator('script')).toHaveCount(0);
  await button(page, editor.showAnswer).click();
  await expect(preview(page)).toContainText('The limit lies within its scale.');
  await button(page, editor.create).click();
  await page.waitForURL(/\/questions\/[0-9a-f]{20}$/);
  const address = new URL(page.url()).pathname;

  await button(page, editor.send).click();
  await expect(page.getByText(`You wrote it, so somebody else has to approve it: ${reviewer.name}.`)).toBeVisible();
  await expect(button(page, words.acts.approve)).toHaveCount(0);
  const [line] = await questions();
  const version = { questionId: line?.questionId ?? '', versionId: line?.id ?? '' };
  const own = { origin, cookie: await newSession(db, writer.id, writer.organizationId) };
  expect((await callAction(own, address, 'approveQuestion', version)).text).toContain(problems['question-own']);
  expect(await listLiveVersions(db, writer.organizationId)).toEqual([]);

  await signInNew(page, reviewer);
  await page.goto(address);
  await button(page, words.acts.approve).click();
  await expect(page.getByText(words.state.live)).toBeVisible();
  expect(await listLiveVersions(db, writer.organizationId)).toMatchObject([{ title: 'Which gauge', number: 1 }]);

  await button(page, words.acts.begin).click();
  await expect(page.getByText(words.state.draftYours)).toBeVisible();
  await box(page, editor.title).fill('Which gauge, again');
  await button(page, editor.send).click();
  await expect(page.getByText(/^In review since/)).toBeVisible();
  expect(await listLiveVersions(db, writer.organizationId)).toMatchObject([{ title: 'Which gauge' }]);
  await signInNew(page, writer);
  await page.goto(address);
  await button(page, words.acts.approve).click();
  await expect(page.getByText(words.state.live)).toBeVisible();
  expect((await listVersions(db, version.questionId)).map(({ title, state }) => `${title} ${state}`)).toEqual([
    'Which gauge, again live',
    'Which gauge retired',
  ]);
  await page.getByRole('link', { name: 'Version 1' }).click();
  await expect(page.getByText('This is version 1, not the newest.')).toBeVisible();
  await expect(box(page, editor.title)).toHaveCount(0);
  const log = await listLogEntries(db, writer.organizationId, {}, 50);
  expect(log.map(({ event }) => event).reverse()).toEqual([
    'question-written',
    'question-sent',
    'question-approved',
    'question-version-begun',
    'question-sent',
    'question-approved',
  ]);
});

test('what is handed back comes with a note, and whoever wrote it goes on with it', async ({ page }) => {
  const questionId = await addDraft();
  const reviewer = await colleague();
  await page.goto(`/questions/${questionId}`);
  await button(page, editor.send).click();
  await expect(page.getByText(/^In review since/)).toBeVisible();
  await signInNew(page, reviewer);
  await page.goto(`/questions/${questionId}`);
  await button(page, words.acts.sendBack).click();
  await expect(page.getByText(problems['question-note'])).toBeVisible();
  await page.getByLabel(words.acts.note).fill('Two of them\nare right.');
  await button(page, words.acts.sendBack).click();
  await expect(page.getByText(`A draft by ${writer.name}. Only they can change it.`)).toBeVisible();
  await expect(box(page, editor.title)).toHaveCount(0);
  await signInNew(page, writer);
  await page.goto(`/questions/${questionId}`);
  await expect(page.getByText(/Two of them\s+are right\./)).toBeVisible();
  await box(page, editor.title).fill('Better');
  await button(page, editor.save).click();
  await expect(page.getByText(editor.saved)).toBeVisible();
  expect(await listVersions(db, questionId)).toMatchObject([{ title: 'Better', state: 'draft' }]);
});

test('somebody alone is told who could approve, and may take it back', async ({ page }) => {
  const questionId = await addDraft();
  await page.goto(`/questions/${questionId}`);
  await button(page, editor.send).click();
  await expect(page.getByText(/nobody else here may/)).toBeVisible();
  await button(page, words.acts.takeBack).click();
  await expect(page.getByText(words.state.draftYours)).toBeVisible();
});

test('what is wrong is said where it stands, and nothing typed is lost', async ({ page }) => {
  await page.goto('/questions/new?form=numbers');
  await box(page, editor.title).fill('Drop');
  await box(page, editor.stem).fill('{x} less {z}?');
  await box(page, editor.name).fill('x');
  await box(page, editor.from).fill('0');
  await box(page, editor.to).fill('about ten');
  await box(page, editor.formula).fill('1 / x + cos.constructor("return 1")()');
  await button(page, editor.create).click();
  await expect(page.getByText(problems['question-wrong'])).toBeVisible();
  const faultOf = (name: string) => box(page, name).locator('xpath=..').locator('[data-fault]');
  await expect(faultOf(editor.to)).toHaveText(words.faults.number);
  await expect(faultOf(editor.explanation)).toHaveText(words.faults.missing);
  await expect(box(page, editor.to)).toHaveValue('about ten');
  await box(page, editor.to).fill('10');
  await box(page, editor.explanation).fill('{answer}');
  await page.getByRole('checkbox', { name: 'Filtration' }).check();
  await button(page, editor.create).click();
  await expect(faultOf(editor.formula)).toHaveText('“.” at character 12 is no sign of arithmetic.');
  await expect(faultOf(editor.stem)).toContainText('There is no variable of that name');
  await box(page, editor.stem).fill('One over {x}?');
  await box(page, editor.formula).fill('1 / x');
  await button(page, editor.create).click();
  await expect(faultOf(editor.formula)).toHaveText(/no finite number for x = 0\./);
  expect(await questions()).toEqual([]);
  await box(page, editor.from).fill('1');
  await button(page, editor.preview).click();
  await expect(preview(page)).toContainText(/One over \d+\?/);
  const first = await preview(page)
    .getByText(/One over/)
    .textContent();
  await expect(async () => {
    await button(page, editor.again).click();
    await expect(preview(page).getByText(/One over/)).not.toHaveText(first ?? '', { timeout: 3000 });
  }).toPass();
  await button(page, editor.create).click();
  await page.waitForURL(/\/questions\/[0-9a-f]{20}$/);
  expect(await questions()).toMatchObject([{ title: 'Drop', form: 'numbers', state: 'draft' }]);
});

test('options are added, moved and removed by the keyboard', async ({ page }) => {
  await page.goto('/questions/new?form=order');
  const item = (n: number) => box(page, `Place ${n}`);
  for (const [index, text] of ['one', 'two', 'three'].entries()) await item(index + 1).fill(text);
  await page.getByRole('button', { name: `${editor.down}: Place 1` }).focus();
  await page.keyboard.press('Enter');
  await expect(item(2)).toHaveValue('one');
  await expect(page.getByRole('button', { name: `${editor.down}: Place 2` })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(item(3)).toHaveValue('one');
  await expect(page.getByRole('button', { name: `${editor.up}: Place 3` })).toBeFocused();
  await page.getByRole('button', { name: `${editor.remove}: Place 1` }).press('Enter');
  await expect(page.getByRole('textbox', { name: /^Place/ })).toHaveCount(2);
  await expect(item(1)).toHaveValue('three');
});

test.describe('a picture', () => {
  const drawn = () => sharp({ create: { width: 400, height: 200, channels: 3, background: '#cdd' } });

  async function sendTo(caller: Somebody, body: BodyInit): Promise<Response> {
    const cookie = await newSession(db, caller.id, caller.organizationId);
    return fetch(`${origin}/questions/pictures`, {
      method: 'POST',
      headers: { Origin: origin, Cookie: `${SESSION_COOKIE}=${cookie}` },
      body,
    });
  }

  test('is pointed at in areas that are drawn on it or given by their sides', async ({ page }) => {
    await page.goto('/questions/new?form=spot');
    await fillTexts(page);
    const asked = page.getByRole('group', { name: editor.spotPicture });
    const file = { name: 'no-name.txt', mimeType: 'text/plain', buffer: await drawn().png().toBuffer() };
    await asked.getByLabel(editor.pictureChoose).setInputFiles(file);
    await asked.getByLabel(editor.alt).fill('A filter head');
    const canvas = page.locator('[data-canvas]');
    await canvas.scrollIntoViewIfNeeded();
    const { x, y, width, height } = (await canvas.boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
    await page.mouse.move(x + width * 0.1, y + height * 0.2);
    await page.mouse.down();
    await page.mouse.move(x + width * 0.3, y + height * 0.6, { steps: 5 });
    await page.mouse.up();
    await page.getByRole('group', { name: 'Area 1' }).getByLabel(editor.areaName).fill('left');
    await page.getByRole('checkbox', { name: 'Area 1 is right' }).check();
    await button(page, editor.addArea).click();
    const second = page.getByRole('group', { name: 'Area 2' });
    await second.getByLabel(editor.areaName).fill('right');
    await second.getByLabel(editor.left, { exact: true }).fill('62,5');
    await second.getByLabel(editor.rightSide).fill('90');
    await button(page, editor.preview).click();
    await expect(preview(page).getByRole('radio')).toHaveCount(2);
    await button(page, editor.create).click();
    await page.waitForURL(/\/questions\/[0-9a-f]{20}$/);
    const [line] = await questions();
    const [version] = await listVersions(db, line?.questionId ?? '');
    const body = version?.body.body;
    if (body?.form !== 'spot') throw new Error('No picture to point at');
    const [one, two] = body.areas;
    expect(body.right).toEqual([one?.id]);
    expect(one?.left).toBeCloseTo(0.1, 1);
    expect(one?.bottom).toBeCloseTo(0.6, 1);
    expect(two).toMatchObject({ left: 0.625, right: 0.9 });
  });

  test('is served to those of the organisation alone, as what it was drawn anew as', async ({ page }) => {
    const sent = await sendTo(
      writer,
      (await drawn()
        .jpeg()
        .withExif({ IFD0: { Artist: 'HUSH' } })
        .toBuffer()) as BodyInit,
    );
    const { picture } = (await sent.json()) as { picture: { id: string } };
    await signInNew(page, await colleague('learner'));
    const answer = await page.request.get(`/pictures/${picture.id}`);
    expect(answer.status()).toBe(200);
    expect(answer.headers()).toMatchObject({
      'content-type': 'image/webp',
      'x-content-type-options': 'nosniff',
      'cache-control': 'private, max-age=31536000, immutable',
    });
    expect((await answer.body()).includes('HUSH')).toBe(false);
    await signInNew(page, await somebodyNew('administrator'));
    await expectNotThere(page.request, picture.id, (id) => `/pictures/${id}`);
    await page.context().clearCookies();
    expect((await page.request.get(`/pictures/${picture.id}`)).status()).toBe(404);
    for (const path of ['..%2ffaultwright.db', '..%2f..%2fetc%2fpasswd', `${picture.id}%00`])
      expect((await page.request.get(`/pictures/${path}`)).status(), path).toBe(404);
  });

  test('that is none, or too large, is refused in a clear line', async () => {
    const svg = '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>';
    const png = await drawn().png().toBuffer();
    const refused: [BodyInit, string][] = [
      [svg, problems['picture-kind']],
      ['GIF89a', problems['picture-kind']],
      ['', problems['picture-kind']],
      [png.subarray(0, 60) as BodyInit, problems['picture-broken']],
      [Buffer.concat([png.subarray(0, 8), Buffer.from(svg)]) as BodyInit, problems['picture-broken']],
    ];
    for (const [body, sentence] of refused) {
      const answer = await sendTo(writer, body);
      expect(answer.status).toBe(400);
      expect(await answer.json()).toEqual({ error: sentence });
    }
    const large = await sendTo(writer, new Uint8Array(5 * 1024 * 1024 + 1)).catch(() => undefined);
    // The server hangs up on whoever goes on sending.
    expect([413, undefined]).toContain(large?.status);
    expect((await sendTo(await colleague('learner'), png as BodyInit)).status).toBe(404);
    const elsewhere = await fetch(`${origin}/questions/pictures`, { method: 'POST', body: png as BodyInit });
    expect(elsewhere.status).toBe(403);
  });

  test('of another organisation cannot be put into a question', async () => {
    const stranger = await somebodyNew('instructor');
    const sent = await sendTo(stranger, (await drawn().png().toBuffer()) as BodyInit);
    const { picture } = (await sent.json()) as { picture: { id: string; width: number; height: number } };
    const option = (id: string) => ({ id, text: id, because: '' });
    const draft = {
      ...{ title: 'x', stem: 'x', explanation: 'x', topics: ['filtration'], difficulty: '0', seconds: '60' },
      picture: { ...picture, alt: 'x' },
      body: { form: 'choice', shuffle: true, options: [option('1'), option('2')], right: ['1'] },
    };
    const own = { origin, cookie: await newSession(db, writer.id, writer.organizationId) };
    const fields = { question: JSON.stringify(draft), key: 'feedfeedfeedfeedfeed' };
    const answer = await callAction(own, '/questions/new', 'createQuestion', fields);
    expect(answer.text).toContain(words.faults['no-such-picture']);
    const alone = { ...fields, question: JSON.stringify({ ...draft, picture: null }) };
    expect((await callAction(own, '/questions/new', 'createQuestion', alone)).goesTo).toMatch(
      /^\/questions\/[0-9a-f]{20}/,
    );
    await callAction(own, '/questions/new', 'createQuestion', alone);
    expect(await questions()).toHaveLength(1);
  });
});

test('a draft is nobody’s to change but its writer’s, and a version in review nobody’s', async () => {
  const questionId = await addDraft();
  const fields = {
    questionId,
    versionId: `${questionId}-1`,
    question: JSON.stringify({
      ...{ title: 'Changed', stem: 'x', explanation: 'x', topics: ['filtration'], difficulty: '0', seconds: '60' },
      picture: null,
      body: { form: 'words', most: '600', model: 'x', guidance: '', steps: '3' },
    }),
  };
  const as = async ({ id, organizationId }: Somebody) => ({ origin, cookie: await newSession(db, id, organizationId) });
  const save = async (who: Somebody, more = {}) =>
    (await callAction(await as(who), `/questions/${questionId}`, 'saveQuestion', { ...fields, ...more })).text;
  expect(await save(await colleague())).toContain(problems['question-moved']);
  expect(await save(await somebodyNew('instructor'))).toContain(problems['not-there']);
  expect(await save(await colleague('learner'))).toContain(problems['not-there']);
  expect(await save(writer, { question: '{"title":1}' })).toContain(problems['question-malformed']);
  expect(await listVersions(db, questionId)).toMatchObject([{ title: aWrittenQuestion().title }]);
  expect(await save(writer, { send: 'yes' })).toContain('saved');
  expect(await save(writer)).toContain(problems['question-moved']);
  expect(await listVersions(db, questionId)).toMatchObject([{ title: 'Changed', state: 'in-review' }]);
});

test('another organisation’s question looks the same as one that does not exist', async ({ page }) => {
  const questionId = await addDraft();
  await signInNew(page, await somebodyNew('administrator'));
  await expectNotThere(page.request, questionId, (id) => `/questions/${id}`);
});

test('a learner answers free text in a drill, somebody marks it unseen who wrote it, and the learner reads that', async ({
  page,
}) => {
  const learner = await colleague('learner');
  const questionId = await addDraft(aWrittenQuestion('words', { stem: 'Why does it **starve**?' }));
  const sittingId = `drill${questionId}`.slice(0, 20);
  await addDrillOn(db, `${questionId}-1`, {
    id: sittingId,
    learnerId: learner.id,
    organizationId: writer.organizationId,
  });
  await signInNew(page, learner);
  await page.goto(`/learn/sittings/${sittingId}`);
  await expect(page.locator('strong', { hasText: 'starve' })).toBeVisible();
  expect(await page.content()).not.toContain('One mark for air.');
  await page.getByLabel(messages.questions.words.label).fill('Air comes in <b>at the joint</b>.');
  await button(page, messages.sittings.answer).click();
  await expect(page.getByText(messages.questions.marked.waiting)).toBeVisible();

  await signInNew(page, writer);
  await page.goto('/questions');
  await page.getByRole('link', { name: 'Free text to mark: 1 answer waits' }).click();
  await expect(page.getByText('Air comes in <b>at the joint</b>.')).toBeVisible();
  await expect(page.getByText('One mark for air.')).toBeVisible();
  expect(await page.content()).not.toContain(learner.name);
  await page.getByRole('link', { name: words.marking.showNames }).click();
  await expect(page.getByText(`Answered by ${learner.name}`)).toBeVisible();
  await page.getByRole('link', { name: words.marking.hideNames }).click();
  await page.getByRole('radio', { name: '2', exact: true }).check();
  await page.getByLabel(words.marking.comment).fill('And the third thing?');
  await button(page, words.marking.save).click();
  await expect(page.getByText('No answer waits.')).toBeVisible();
  await page.getByRole('link', { name: words.marking.change }).click();
  await expect(page.getByText(/^Marked before: 2 of 3/)).toBeVisible();
  const place = { sittingId, place: '1', seq: '2', comment: '' };
  const as = async ({ id, organizationId }: Somebody) => ({ origin, cookie: await newSession(db, id, organizationId) });
  const mark = async (who: Somebody, fields: Record<string, string>) =>
    (await callAction(await as(who), '/questions/to-mark', 'markFreeText', { ...place, ...fields })).text;
  expect(await mark(writer, { score: '4' })).toContain(problems['marks-wrong']);
  expect(await mark(writer, { score: '3', seq: '1' })).toContain(problems['marks-moved']);
  expect(await mark(await somebodyNew('instructor'), { score: '3' })).toContain(problems['marks-wrong']);
  expect(await mark(await colleague('administrator'), { score: '3' })).toContain(problems['not-there']);
  expect(await mark(learner, { score: '3' })).toContain(problems['not-there']);
  expect(await listManualMarks(db, { sittingId, place: 1 })).toMatchObject([{ score: 2, markedBy: writer.id }]);

  await signInNew(page, learner);
  await page.goto(`/learn/sittings/${sittingId}`);
  await expect(page.getByText('And the third thing?')).toBeVisible();
  await expect(page.getByText('Partly right: 2 of 3.')).toBeVisible();
});

test('the list is narrowed down by state, form and title', async ({ page }) => {
  await addDraft(aWrittenQuestion('choice', { title: 'Gauges' }));
  await addDraft(aWrittenQuestion('words', { title: 'Reasons' }));
  await page.goto('/questions');
  const listed = page.getByRole('main').getByRole('row').getByRole('link');
  // Both may be of the same millisecond, and then stand in either order.
  await expect(listed).toHaveCount(2);
  await page.getByRole('combobox', { name: words.form }).selectOption(words.forms.words);
  await button(page, words.find).click();
  await expect(listed).toHaveText(['Reasons']);
  await page.getByRole('link', { name: 'Live (0)' }).click();
  await expect(page.getByText('No question matches.')).toBeVisible();
  await page.goto('/questions?search=gaug');
  await expect(listed).toHaveText(['Gauges']);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 800 } });

  test('the editor of every form needs no sideways scrolling, and axe finds nothing serious', async ({ page }) => {
    test.slow();
    const paths = ['/questions', '/questions/new', '/questions/to-mark'];
    for (const form of Object.keys(words.forms)) paths.push(`/questions/new?form=${form}`);
    paths.push(`/questions/${await addDraft(aWrittenQuestion('point'))}`);
    for (const path of paths) {
      await page.goto(path);
      expect(await page.evaluate(() => document.documentElement.scrollWidth), path).toBeLessThanOrEqual(390);
      await expectClean(page, path);
    }
  });
});
