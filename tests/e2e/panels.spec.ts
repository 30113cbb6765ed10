import type { Page } from '@playwright/test';
import { loadCatalogue } from '@/content/load';
import messages from '@/content/messages/en.json' with { type: 'json' };
import type { Db } from '@/db/client';
import { findPanel, listPanels, listRatings } from '@/db/queries/panels';
import { poolTasks } from '@/db/schema';
import { QUESTION_VERSION } from '@/lib/questions/question';
import { questionFromSeed } from '@/lib/questions/question-from-seed';
import { callAction } from '../support/call-action';
import { newSession } from '../support/people';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { expectNoOverflow } from './no-overflow';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';

test.use({ as: null });

const { panels: words, schemes, problems, applying, applications } = messages;
const origin = `http://127.0.0.1:${SHARED_PORT}`;
const catalogue = loadCatalogue();
let db: Db;

test.beforeAll(async () => {
  db = openPlace(placeFor(SHARED_PORT));
  for (const topic of ['suction-tank-and-air', 'low-pressure-supply-and-regulation', 'filtration'])
    for (let n = 0; n < 3; n++) await addPracticeQuestion(topic, `panel ${topic} ${n} ${Date.now()}`);
});

async function addPracticeQuestion(topic: string, seed: string): Promise<void> {
  const spec = { kind: 'judge', topic, seed } as const;
  const { difficulty, guessFloor: floor, seconds } = questionFromSeed(spec, catalogue);
  const model = { kind: 'choice', difficulty, floor, spread: 0.5 } as const;
  await db.insert(poolTasks).values({
    ...{ id: seed.replaceAll(' ', '-'), use: 'practice', kind: 'question', caseCode: null, spec, difficulty, seconds },
    ...{ topics: [{ topic, model }], features: {}, contentHash: catalogue.questionHash },
    ...{ generatorVersion: QUESTION_VERSION, addedAt: new Date() },
  });
}

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

/** Rates every task of the panel that the page shows, one after the other. */
async function rateAll(page: Page, panelId: string, tasks: number, percent: number): Promise<void> {
  for (let place = 1; place <= tasks; place++) {
    await page.goto(`/panels/${panelId}?task=${place}`);
    await page.getByLabel(words.expectedPercent).fill(String(percent + place));
    await button(page, words.rate).click();
    await expect(page.getByRole('status')).toContainText(words.rated);
  }
}

test('two judges rate twice, the line is taken over, and nobody sees what the other said before their own', async ({
  page,
  browser,
}) => {
  test.slow();
  const administrator = await somebodyNew('administrator');
  const { organizationId } = administrator;
  const first = await somebodyNew('instructor', organizationId);
  const second = await somebodyNew('shop-lead', organizationId);
  const learner = await somebodyNew('learner', organizationId);

  await signInNew(page, administrator);
  await page.goto('/panels');
  await expect(page.getByRole('checkbox', { name: learner.name })).toHaveCount(0);
  await page.getByLabel(words.name).fill('Spring line');
  await page.getByLabel(words.tasks, { exact: true }).fill('6');
  await page.getByRole('checkbox', { name: first.name }).check();
  await button(page, words.make).click();
  await expect(page.getByRole('alert').filter({ hasText: problems['panel-judges'] })).toBeVisible();
  await page.getByRole('checkbox', { name: second.name }).check();
  await button(page, words.make).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Spring line' })).toBeVisible();
  const [panel] = await listPanels(db, organizationId, 1);
  if (!panel) throw new Error('No panel');
  const tasks = panel.tasks.length;
  await button(page, words.toSecond).click();
  await expect(page.getByRole('alert').filter({ hasText: problems['panel-too-few'] })).toBeVisible();

  const [one, other] = [await pageOf(first), await pageOf(second)];
  await rateAll(one, panel.id, tasks, 55);
  const before = await (await other.request.get(`/panels/${panel.id}`)).text();
  expect(before).not.toContain(words.spreadPercent.slice(0, 20));
  await rateAll(other, panel.id, tasks, 70);

  await page.goto(`/panels/${panel.id}`);
  await button(page, words.toSecond).click();
  await expect(button(page, words.close)).toBeVisible();
  await one.goto(`/panels/${panel.id}`);
  await expect(one.getByText('2 judges said 56 % to 71 %, on the average 63.5 %.')).toBeVisible();
  await expect(one.getByText(second.name)).toHaveCount(0);
  await expectClean(one);
  await rateAll(one, panel.id, tasks, 60);
  await rateAll(other, panel.id, tasks, 66);
  expect(await listRatings(db, panel.id)).toHaveLength(4 * tasks);

  await page.reload();
  await button(page, words.close).click();
  await expect(page.getByRole('heading', { name: words.outcomeTitle })).toBeVisible();
  await expectClean(page);
  await page.setViewportSize({ width: 360, height: 740 });
  await expectNoOverflow(page);
  await page.getByLabel(words.note).fill('Judges set the line');
  await button(page, words.adopt).click();
  await expect(page.getByText('Judges set the line')).toBeVisible();
  await expect(page.getByText(/^2 judges set it on/)).toBeVisible();
  await expectNoOverflow(page);
  await expectClean(page);
  expect((await findPanel(db, organizationId, panel.id))?.adoptedVersion).toBe(2);

  const away = await pageOf(learner, browser);
  await away.goto('/schemes/low-pressure-diagnosis');
  await expect(away.getByText('Judges set the line')).toBeVisible();
  await button(away, applying.apply).click();
  await expect(button(away, applying.withdraw)).toBeVisible();
  await page.goto('/schemes/applications');
  await page.getByRole('link', { name: learner.name }).click();
  await expect(page.getByText(applications.staysOpen)).toBeVisible();
  await expectClean(page);

  async function pageOf(somebody: Somebody, from = browser): Promise<Page> {
    const opened = await (await from.newContext({ baseURL: origin })).newPage();
    await signInNew(opened, somebody);
    return opened;
  }
});

test('rules are changed as a version, and nothing that was typed is lost when something is wrong', async ({ page }) => {
  const administrator = await somebodyNew('administrator');
  await signInNew(page, administrator);
  await page.goto('/schemes/low-pressure-diagnosis/change');
  await page.getByLabel(schemes.form.windowDays).fill('many');
  await page.getByLabel(schemes.form.note).fill('A longer window');
  await button(page, 'Keep as version 2').click();
  await expect(page.getByText(schemes.wrong.whole)).toBeVisible();
  await expect(page.getByLabel(schemes.form.note)).toHaveValue('A longer window');
  await page.getByLabel(schemes.form.windowDays).fill('400');
  await button(page, 'Keep as version 2').click();
  await expect(page.getByText('A longer window')).toBeVisible();
  await page.getByRole('link', { name: 'Version 1' }).click();
  await expect(page.getByText(schemes.older)).toBeVisible();
  await expectClean(page);
});

test('a judge of one organisation rates nothing of another, and who learns here sees no task with its answer', async ({
  page,
}) => {
  const administrator = await somebodyNew('administrator');
  const both = await somebodyNew('instructor,learner', administrator.organizationId);
  const { panels, panelJudges } = await import('@/db/schema');
  const id = `panel${Date.now().toString(36)}`;
  const [pooled] = await db.select().from(poolTasks);
  const topic = pooled?.topics[0];
  if (!pooled || !topic) throw new Error('No task in the pool');
  const task = { poolTaskId: pooled.id, kind: pooled.kind, topic: topic.topic, model: topic.model, outOf: 1 };
  await db.insert(panels).values({
    ...{ id, organizationId: administrator.organizationId, schemeId: 'low-pressure-diagnosis', title: 'Autumn' },
    ...{ tasks: [task], state: 'first-round', createdBy: administrator.id, createdAt: new Date() },
  });
  await db.insert(panelJudges).values({ panelId: id, judgeId: both.id });
  await signInNew(page, both);
  await page.goto(`/panels/${id}`);
  await expect(page.getByRole('heading', { level: 1, name: 'Autumn' })).toBeVisible();
  await expect(page.getByLabel(words.expectedPercent)).toHaveCount(0);
  const caller = { origin, cookie: await newSession(db, both.id, both.organizationId) };
  const { text } = await callAction(caller, `/panels/${id}`, 'rateTask', { panelId: id, task: '1', expected: '50' });
  expect(text).toContain(problems['panel-not-judge']);
  const stranger = await somebodyNew('administrator');
  const away = { origin, cookie: await newSession(db, stranger.id, stranger.organizationId) };
  const refused = await callAction(away, `/panels/${id}`, 'movePanelOn', { panelId: id, from: 'first-round' });
  expect(refused.text).toContain(problems['not-there']);
});
