import type { Locator, Page } from '@playwright/test';
import { listLogEntries } from '@/db/queries/log-entries';
import { intakes } from '@/db/schema';
import { aRoleProfile } from '../support/competency-rows';
import { addShown, type ShownTopic } from '../support/evidence-rows';
import { readPdf } from '../support/read-pdf';
import { shared } from './at-questions';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { wholeBothWays } from './heard';
import { expectNoOverflow } from './no-overflow';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';

const low = 'low-pressure-unsupervised';
const lowTopics = [
  'safe-working-and-isolation',
  'suction-tank-and-air',
  'low-pressure-supply-and-regulation',
  'filtration',
  'reasoning-and-repair-proof',
];
const strong: readonly ShownTopic[] = lowTopics.map((topic) => ({ topic, right: 20, wrong: 1 }));

interface Shop {
  lead: Somebody;
  instructor: Somebody;
  learner: Somebody;
}

/** A shop with one learner who has shown what is asked. */
async function shopWith(topics: readonly ShownTopic[], cases?: readonly number[]): Promise<Shop> {
  const lead = await somebodyNew('shop-lead');
  const { organizationId } = lead;
  const [instructor, learner] = [
    await somebodyNew('instructor', organizationId),
    await somebodyNew('learner', organizationId),
  ];
  await addShown(shared(), { learnerId: learner.id, organizationId }, { topics, ...(cases && { cases }) });
  return { lead, instructor, learner };
}

test('a shop lead goes from the board to a report, has work seen by hand, signs off, and takes it back', async ({
  page,
}) => {
  const { lead, instructor, learner } = await shopWith(strong);
  await signInNew(page, lead);
  await page.goto(`/readiness?profile=${low}`);
  const grid = page.getByRole('grid', { name: /People and what the evidence says/ });
  await expect(grid).toContainText(learner.name);
  await grid.focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect(page.getByText(/Suction side, tank and air: ready; chance > 0\.99 of being/)).toBeVisible();
  await page.keyboard.press('Enter');

  await expect(page.getByRole('heading', { level: 1 })).toContainText(learner.name);
  await expect(page.getByText('This role asks for a hands-on check, and there is none.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Sign off' })).toHaveCount(0);
  await expect(page.getByText(/Of 100 people who are just below the line/).first()).toBeVisible();
  await expectClean(page);

  await signInNew(page, instructor);
  await page.reload();
  await page.getByRole('link', { name: 'Write down a hands-on check' }).click();
  await writeHandsOn(page);
  await expect(page.getByText('This one counts for this role.')).toBeVisible();
  await expect(page.getByText('Signing off is for the shop lead.')).toBeVisible();

  await signInNew(page, lead);
  await page.reload();
  await page.getByLabel('Your comment').fill('Good hands, asks when unsure');
  await page.getByLabel('I have read what the evidence says').check();
  await page.getByRole('button', { name: 'Sign off' }).click();
  await expect(page.getByText(/Signed off by .* until .*Good hands, asks when unsure/)).toBeVisible();
  await page.goto(`/readiness?profile=${low}`);
  await expect(grid).toContainText(/yes, 36\d days more/);

  await page.goto(`/readiness/${learner.id}/${low}`);
  const signOff = page.getByRole('region', { name: 'Sign-off' });
  await takeBack(signOff, 'Seen to work with the engine running');
  await expect(signOff.getByText(/Taken back on .*Seen to work with the engine running/)).toBeVisible();
  await page.goto(`/readiness?profile=${low}`);
  await expect(grid).not.toContainText('yes,');

  const events = (await listLogEntries(shared(), lead.organizationId, {}, 20)).map(({ event }) => event);
  expect(events).toEqual(expect.arrayContaining(['observation-written', 'signed-off', 'sign-off-taken-back']));
});

test('a hands-on check that is taken back bars the sign-off again', async ({ page }) => {
  const { lead, learner } = await shopWith(strong);
  await signInNew(page, lead);
  await page.goto(`/readiness/${learner.id}/${low}/hands-on`);
  await writeHandsOn(page);
  await expect(page.getByRole('button', { name: 'Sign off' })).toBeVisible();
  await takeBack(page.getByRole('region', { name: 'Hands-on checks' }), 'Another person');
  await expect(page.getByText('This role asks for a hands-on check, and there is none.')).toBeVisible();
});

test('whoever is not ready cannot be signed off, and is told what would settle it', async ({ page }) => {
  const { lead, learner } = await shopWith(
    [
      { topic: 'safe-working-and-isolation', right: 20, wrong: 1 },
      { topic: 'filtration', right: 0, wrong: 12 },
    ],
    [0, 1, 0],
  );
  await signInNew(page, lead);
  await page.goto(`/readiness/${learner.id}/${low}`);
  const signOff = page.getByRole('region', { name: 'Sign-off' });
  await expect(signOff.getByText('Filtration is below its line.')).toBeVisible();
  await expect(signOff.getByText('Suction side, tank and air was not tested.')).toBeVisible();
  await expect(signOff.getByText('A safety-critical act is among the cases looked back over.')).toBeVisible();
  await expect(signOff.getByRole('button', { name: 'Sign off' })).toHaveCount(0);
});

test('nothing that was typed into a hands-on check is lost to what is missing', async ({ page }) => {
  const { lead, learner } = await shopWith(strong);
  await signInNew(page, lead);
  await page.goto(`/readiness/${learner.id}/${low}/hands-on`);
  await page.getByRole('button', { name: 'Add something' }).click();
  await page.getByLabel('In your own words').fill('Labels the lines that come off');
  await fillHandsOn(page);
  await page.getByRole('button', { name: 'Write it down' }).click();
  await expect(page.getByRole('alert').filter({ hasText: 'needs words, a topic and points' })).toBeVisible();
  await expect(page.getByLabel('In your own words')).toHaveValue('Labels the lines that come off');
  await page.getByLabel('Topic').selectOption({ label: 'Filtration' });
  await page.getByLabel('Points, 0 to 3').selectOption('3');
  await page.getByRole('button', { name: 'Write it down' }).click();
  await expect(page.getByText('Labels the lines that come off: 3 of 3')).toBeVisible();
});

test('the report is to be had as a tagged document with all that the page says', async ({ page }) => {
  const { lead, learner } = await shopWith([{ topic: 'filtration', right: 20, wrong: 1, daysAgo: 250 }]);
  await signInNew(page, lead);
  const answer = await page.request.get(`/readiness/${learner.id}/${low}/pdf`);
  expect(answer.headers()['content-type']).toBe('application/pdf');
  const pdf = await readPdf(await answer.body());
  expect(pdf).toMatchObject({ isTagged: true, language: 'en' });
  const said = pdf.text.replace(/\s+/g, ' ');
  for (const part of [
    learner.name,
    'The maker’s procedure, local rules and a licensed person come first',
    'not enough evidence',
    'Filtration',
    'Of 100 people who are just below the line',
    'Nothing of this changes|goes from',
    'What to train next',
    lead.name,
  ])
    expect(said).toMatch(new RegExp(part));
  expect(said).not.toMatch(/extra time/i);
});

test('what is to be trained next opens in the editor of sets, and nothing is kept before it is kept', async ({
  page,
}) => {
  const { instructor, learner } = await shopWith([]);
  await signInNew(page, instructor);
  await page.goto(`/readiness/${learner.id}/${low}`);
  await page.getByRole('link', { name: 'Build a set from this' }).click();
  await expect(page.getByLabel('Title')).toHaveValue(/^Training: /);
  await page.goto('/sets');
  await expect(page.getByText(/^Training: /)).toHaveCount(0);
});

test('a board narrows down by what changes soon, and fits a small screen', async ({ page }) => {
  const { lead, learner } = await shopWith(strong.map((one) => ({ ...one, daysAgo: 225 })));
  const other = await somebodyNew('learner', lead.organizationId);
  await signInNew(page, lead);
  await page.setViewportSize({ width: 390, height: 800 });
  await page.goto(`/readiness?profile=${low}`);
  const grid = page.getByRole('grid');
  await expect(grid).toHaveAttribute('aria-rowcount', '3');
  await expectNoOverflow(page);
  await page.getByLabel('Changes soon').selectOption('60');
  await expect(grid).toHaveAttribute('aria-rowcount', '2');
  await expect(grid).toContainText(learner.name);
  await expect(grid).not.toContainText(other.name);
  await expect(page).toHaveURL(/soon=60/);
  await expectClean(page);
});

test('a shop lead sets what a role asks for, is told what is wrong where it stands, and loses nothing', async ({
  page,
}) => {
  const { lead, learner } = await shopWith(strong);
  await signInNew(page, lead);
  await page.goto(`/profiles/${low}`);
  const editor = page.getByRole('form', { name: 'Change this profile' });
  await editor.getByLabel('Responses a topic, at least').fill('40');
  await editor.getByLabel('Name', { exact: true }).fill('Low side alone');
  await editor.getByRole('button', { name: 'Save' }).click();
  await expect(editor.getByText('A whole number, no less than the fewest.')).toBeVisible();
  await expect(editor.getByLabel('Name', { exact: true })).toHaveValue('Low side alone');
  await editor.getByLabel('Responses a topic, at most').fill('50');
  await editor.getByRole('button', { name: 'Save' }).click();
  await expect(editor.getByText('Saved.')).toBeVisible();
  await expectClean(page);
  await page.goto(`/readiness/${learner.id}/${low}`);
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Low side alone');
  await expect(page.getByText(/too little has been seen/).first()).toBeVisible();

  await page.goto(`/profiles/${low}`);
  await page.getByRole('button', { name: 'Do without this profile' }).click();
  await expect(page.getByText('Not in use here.')).toBeVisible();
  await page.goto('/readiness');
  await expect(page.getByRole('link', { name: 'Low side alone' })).toHaveCount(0);
});

async function fillHandsOn(page: Page): Promise<void> {
  await expect(page.getByRole('heading', { name: /^Hands-on check of/ })).toBeVisible();
  for (const group of await page.getByRole('group').all()) {
    const best = group.getByRole('radio').last();
    if ((await best.count()) > 0) await best.check();
  }
  await page.getByLabel('Comment').fill('On the training bench');
}

async function writeHandsOn(page: Page): Promise<void> {
  await fillHandsOn(page);
  await page.getByRole('button', { name: 'Write it down' }).click();
}

async function takeBack(where: Locator, reason: string): Promise<void> {
  await where.getByText('Take this back').first().click();
  await where.getByLabel('Why').fill(reason);
  await where.getByRole('button', { name: 'Take this back' }).click();
}

test('extra time that somebody had at a new-hire check shows nowhere on what is said of them', async ({ page }) => {
  const { lead, learner } = await shopWith(strong);
  const profile = aRoleProfile({ id: low });
  await shared()
    .insert(intakes)
    .values({
      id: `intake-${learner.id}`,
      organizationId: lead.organizationId,
      learnerId: learner.id,
      profileId: low,
      profile,
      createdBy: lead.id,
      createdAt: new Date(),
      linkEndsAt: new Date(),
      extraTime: 0.375,
    });
  await signInNew(page, lead);
  const report = `/readiness/${learner.id}/${low}`;
  const heard = await wholeBothWays(page.request, [`/readiness?profile=${low}`, report, `${report}/hands-on`]);
  expect(heard.length).toBeGreaterThan(3);
  const pdf = await readPdf(await (await page.request.get(`${report}/pdf`)).body());
  for (const answer of [...heard, pdf.text]) expect(answer).not.toMatch(/extra.?time|0\.375|37[.,]5/i);
});
