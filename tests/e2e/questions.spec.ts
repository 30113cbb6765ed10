import { once } from 'node:events';
import type { Browser, Page } from '@playwright/test';
import { eq } from 'drizzle-orm';
import { listMarks } from '@/db/queries/question-marks';
import { listSittingAnswers } from '@/db/queries/sitting-answers';
import { findSitting } from '@/db/queries/sittings';
import { sittingAnswers, sittingQuestions, sittings } from '@/db/schema';
import type { QuestionBody } from '@/lib/questions/question';
import { callAction } from '../support/call-action';
import { college, newSession, people, SESSION_COOKIE } from '../support/people';
import { freshData, openPlace, placeFor, SHARED_PORT, startServer, untilUp } from '../support/server';
import { anAnswerTo, answerDrill, aSpec, give, kindsAndForms, openSitting, questionOf, shared } from './at-questions';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { expectNoOverflow } from './no-overflow';
import { expectNotThere } from './not-yours-alike';
import { signInNew, somebodyNew } from './somebody-new';
import { tabTo } from './tabbing';

const dial = aSpec('read-dial');
const judged = aSpec('judge');
const limit = aSpec('which-limit', 'choice');

const PHONE = { width: 390, height: 844 };

test('somebody drills a topic with the keyboard alone', async ({ page }) => {
  await page.goto('/learn/questions');
  await tabTo(page, page.getByRole('combobox', { name: 'Topic' }));
  await page.keyboard.type('Filtration');
  await tabTo(page, page.getByRole('button', { name: 'Start the drill' }));
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/learn\/sittings\/[0-9a-f]{20}$/);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Drill: Filtration');
  await expect(page.getByRole('heading', { name: 'Question 1' })).toBeVisible();
});

test('number keys choose, Enter answers and goes on, and the drill ends with how it went', async ({ page }) => {
  const right = rightOption(questionOf(judged));
  const id = await openSitting([judged], { topics: [judged.topic ?? ''] });
  await page.goto(`/learn/sittings/${id}`);
  await expect(page.getByRole('button', { name: 'Answer', exact: true })).toBeEnabled();
  await page.keyboard.press(String(right + 1));
  await page.keyboard.press('Enter');
  await expect(page.getByText('Right.', { exact: true })).toBeVisible();
  await expect(page.getByText('1 of 1 right so far')).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Question 2' })).toBeFocused();
  await tabTo(page, page.getByRole('button', { name: 'Stop here' }));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'How it went' })).toBeVisible();
  await expect(page.getByText('1 of 1 points in 1 question.')).toBeVisible();
  expect((await findSitting(shared(), people.learner.id, id))?.handedInAt).not.toBeNull();
});

test('a wrong answer is told with the right one and how it comes about, and stays as it was told', async ({ page }) => {
  const question = questionOf(judged);
  const id = await openSitting([judged]);
  await page.goto(`/learn/sittings/${id}`);
  const wrong = (rightOption(question) + 1) % 2;
  await answerDrill(page, { form: 'choice', option: optionsOf(question)[wrong] ?? '' });
  await expect(page.getByText('Not right.', { exact: true })).toBeVisible();
  await page.reload();
  await expect(page.getByText('Not right.', { exact: true })).toBeVisible();
});

test('nothing is lost of what was typed when an answer is not complete', async ({ page }) => {
  const id = await openSitting([dial]);
  await page.goto(`/learn/sittings/${id}`);
  await page.locator('[name^="value."]').fill('twelve');
  await page.getByRole('button', { name: 'Answer', exact: true }).click();
  await expect(page.getByText(/“twelve” is not a number/)).toBeVisible();
  await expect(page.locator('[name^="value."]')).toHaveValue('twelve');
  expect(await listSittingAnswers(shared(), people.learner.id, id)).toEqual([]);
});

test('a topic is drilled from its panel', async ({ page }) => {
  await page.goto('/learn/topics');
  await page.getByRole('button', { name: 'Drill questions: Fuel quality' }).click();
  await page.waitForURL(/\/learn\/sittings\//);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Drill: Fuel quality');
});

test('what was answered is due another day, and may be reviewed before', async ({ page }) => {
  await signInNew(page, await somebodyNew('learner'));
  await page.goto('/learn/questions');
  await expect(page.getByText('Nothing yet: drill a topic first.')).toBeVisible();
  await page.getByRole('button', { name: 'Start the drill' }).click();
  await page.waitForURL(/\/learn\/sittings\//);
  const id = page.url().split('/').at(-1) ?? '';
  const [place] = await shared().select().from(sittingQuestions).where(eq(sittingQuestions.sittingId, id));
  if (!place?.spec) throw new Error('Nothing is asked');
  await answerDrill(page, anAnswerTo(questionOf(place.spec)));
  await page.goto('/learn/questions');
  await expect(page.getByText(/^Nothing is due\. The next is due on /)).toBeVisible();
  await page.getByRole('button', { name: 'Review now' }).click();
  await page.waitForURL(/\/learn\/sittings\//);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/^Review/);
});

test('somebody starts a check of themselves, as long and on what they choose', async ({ page }) => {
  await page.goto('/learn/questions');
  for (const box of await page.getByRole('checkbox').all()) await box.uncheck();
  await page.getByRole('checkbox', { name: 'Filtration' }).check();
  await page.getByLabel('Questions', { exact: true }).fill('6');
  await page.getByLabel('Minutes').fill('30');
  await page.getByRole('button', { name: 'Start the check' }).click();
  await page.waitForURL(/\/learn\/sittings\//);
  await expect(page.getByText(/^(30|29) minutes left/)).toBeVisible();
  await expect(listed(page)).toHaveCount(6);
});

test('a check is flagged, left and gone back to, survives the browser, and tells everything once it is handed in', async ({
  page,
  browser,
}) => {
  const id = await openSitting([judged, limit, dial], { mode: 'check' });
  await page.goto(`/learn/sittings/${id}`);
  await give(page, anAnswerTo(questionOf(judged)));
  await expect(page.getByText('Saved.')).toBeVisible();
  await expect(listed(page).nth(0)).toHaveAccessibleName('Question 1, answered');
  await page.getByRole('button', { name: 'Put a flag on it' }).click();
  await expect(listed(page).nth(0)).toHaveAccessibleName('Question 1, answered, flagged');
  await page.getByRole('link', { name: 'Question after' }).click();
  await expect(page.getByRole('heading', { name: 'Question 2 of 3' })).toBeFocused();
  await listed(page).nth(0).click();
  await expect(page.getByRole('heading', { name: 'Question 1 of 3' })).toBeVisible();
  await expect(page.getByRole('radio', { checked: true })).toHaveCount(1);
  await expect(page.getByText('How it comes about')).toHaveCount(0);

  await page.close();
  const again = await another(browser);
  await again.goto(`/learn/sittings/${id}?at=1`);
  await expect(again.getByRole('radio', { checked: true })).toHaveCount(1);
  await expect(again.getByText('2 questions are not answered: 2, 3.')).toBeVisible();
  await expect(again.getByText('1 is flagged: 1.')).toBeVisible();
  await again.getByRole('button', { name: 'Hand it in' }).click();
  await expect(again.getByText('1 of 3 points in 3 questions.')).toBeVisible();
  await again.getByRole('link', { name: /^Question 2/ }).click();
  await expect(again.getByText('Not answered.', { exact: true })).toBeVisible();
  await expect(again.getByRole('heading', { name: 'How it comes about' })).toBeVisible();
  await again.context().close();
});

test('a choice made just before a press elsewhere is saved first', async ({ page }) => {
  const id = await openSitting([judged, limit], { mode: 'check' });
  await page.goto(`/learn/sittings/${id}`);
  await give(page, anAnswerTo(questionOf(judged)));
  await page.getByRole('link', { name: 'Question after' }).click();
  await expect(page.getByRole('heading', { name: 'Question 2 of 2' })).toBeVisible();
  expect(await listSittingAnswers(shared(), people.learner.id, id)).toHaveLength(1);
});

test('a choice made while the page is drawn anew is saved', async ({ page }) => {
  const id = await openSitting([judged, limit], { mode: 'check' });
  await page.goto(`/learn/sittings/${id}`);
  let held = false;
  await page.route('**/learn/sittings/**', async (route) => {
    if (held || route.request().method() !== 'POST') return route.continue();
    held = true;
    const response = await route.fetch();
    // Held back until somebody has chosen, so that what it brings arrives while the choice is unsaved.
    await give(page, anAnswerTo(questionOf(judged)));
    return route.fulfill({ response });
  });
  await page.getByRole('button', { name: 'Put a flag on it' }).click();
  await expect(page.getByText('Saved.')).toBeVisible();
  expect(await listSittingAnswers(shared(), people.learner.id, id)).toHaveLength(1);
});

test('a choice made before the scripts of the page have come is saved', async ({ page }) => {
  const id = await openSitting([judged, limit], { mode: 'check' });
  let open: () => void = () => undefined;
  const chosen = new Promise<void>((resolve) => {
    open = resolve;
  });
  await page.route('**/*.js', async (route) => {
    await chosen;
    await route.continue();
  });
  await page.goto(`/learn/sittings/${id}`, { waitUntil: 'commit' });
  // The page may still be drawn as it comes, and move under the press.
  await expect(() => give(page, anAnswerTo(questionOf(judged)))).toPass();
  open();
  await expect(page.getByText('Saved.')).toBeVisible();
  expect(await listSittingAnswers(shared(), people.learner.id, id)).toHaveLength(1);
});

test('an order and a sign, which no key types, are saved too', async ({ page }) => {
  const order = aSpec('put-in-order');
  const id = await openSitting([order], { mode: 'check' });
  await page.goto(`/learn/sittings/${id}`);
  await page
    .getByRole('button', { name: /^Down:/ })
    .first()
    .click();
  await expect(page.getByText('Saved.')).toBeVisible();
  expect(await listSittingAnswers(shared(), people.learner.id, id)).toHaveLength(1);
});

test.describe('without a connection', () => {
  test.use({ forgiven: /ERR_INTERNET_DISCONNECTED|Failed to fetch/ });

  test('a choice stays, says that it is not saved, and is saved once there is one', async ({ page, context }) => {
    const id = await openSitting([judged, limit], { mode: 'check' });
    await page.goto(`/learn/sittings/${id}`);
    await expect(page.getByRole('button', { name: 'Save the answer' })).toBeEnabled();
    await context.setOffline(true);
    await give(page, anAnswerTo(questionOf(judged)));
    await expect(page.getByText(/^Not saved yet/)).toBeVisible();
    // It cannot be left either.
    await page.getByRole('link', { name: 'Question after' }).click();
    await expect(page.getByRole('heading', { name: 'Question 1 of 2' })).toBeVisible();
    await expect(page.getByRole('radio', { checked: true })).toHaveCount(1);
    await context.setOffline(false);
    await expect(page.getByText('Saved.')).toBeVisible({ timeout: 30_000 });
    expect(await listSittingAnswers(shared(), people.learner.id, id)).toHaveLength(1);
  });
});

test('when the time is over nothing more is taken, and what was saved is marked', async ({ page }) => {
  const id = await openSitting([judged, limit], { mode: 'check', closesAt: new Date(Date.now() + 600_000) });
  await page.goto(`/learn/sittings/${id}`);
  await give(page, anAnswerTo(questionOf(judged)));
  await expect(page.getByText('Saved.')).toBeVisible();
  await page.goto(`/learn/sittings/${id}?at=2`);
  const closed = new Date(Date.now() - 16_000);
  await shared().update(sittings).set({ closesAt: closed }).where(eq(sittings.id, id));
  await give(page, anAnswerTo(questionOf(limit)));
  await expect(page.getByText(/^This is closed: the time is over/)).toBeVisible();
  await page.goto(`/learn/sittings/${id}`);
  await expect(page.getByText('1 of 2 points in 2 questions.')).toBeVisible();
  const handedIn = await findSitting(shared(), people.learner.id, id);
  expect(handedIn?.handedInAt).toEqual(handedIn?.closesAt);
  expect(await listMarks(shared(), people.learner.id, id)).toHaveLength(2);
});

test('the list of sittings hands in what ran out of time', async ({ page }) => {
  const id = await openSitting([judged], { mode: 'check', closesAt: new Date(Date.now() - 60_000) });
  await page.goto('/learn/questions');
  await expect(page.locator(`a[href="/learn/sittings/${id}"]`)).toBeVisible();
  expect((await findSitting(shared(), people.learner.id, id))?.handedInAt).not.toBeNull();
});

test('a server that is killed loses no answer that it acknowledged, and the check goes on', async () => {
  const place = placeFor(3143);
  await freshData(place);
  const db = openPlace(place);
  const origin = `http://127.0.0.1:${place.port}`;
  const caller = { origin, cookie: await newSession(db, people.learner.id) };
  let server = startServer(place, { FAULTWRIGHT_LOG: 'silent' });
  try {
    await untilUp(place);
    const fields = { topics: 'filtration', questions: '5', minutes: '', key: 'a'.repeat(32) };
    const { goesTo } = await callAction(caller, '/learn/questions', 'startCheck', fields);
    const sittingId = /sittings\/(\w+)/.exec(goesTo ?? '')?.[1] ?? '';
    const flag = { sittingId, place: '2', flagged: 'yes', key: 'b'.repeat(32) };
    expect((await callAction(caller, `/learn/sittings/${sittingId}`, 'flagQuestion', flag)).text).toContain(
      '"done":true',
    );
    const gone = once(server, 'exit');
    server.kill('SIGKILL');
    await gone;
    server = startServer(place, { FAULTWRIGHT_LOG: 'silent' });
    await untilUp(place);
    const headers = { Cookie: `${SESSION_COOKIE}=${caller.cookie}` };
    const page = await (await fetch(`${origin}/learn/sittings/${sittingId}`, { headers })).text();
    expect(page).toContain('Question 2, not answered, flagged');
    // The same press again, from a page that heard nothing, starts nothing new.
    expect((await callAction(caller, '/learn/questions', 'startCheck', fields)).goesTo).toContain(sittingId);
  } finally {
    server.kill('SIGKILL');
  }
});

test.describe('what is somebody else’s', () => {
  test.use({ forgiven: /404/ });

  test('looks the same as what does not exist, and nothing can be done in it', async ({ page, request }) => {
    const theirs = await openSitting([judged], {
      learnerId: people.stranger.id,
      organizationId: college.id,
      mode: 'check',
    });
    const beside = await openSitting([judged], { learnerId: people.secondLearner.id });
    for (const id of [theirs, beside]) {
      await expectNotThere(request, id, (one) => `/learn/sittings/${one}`);
      const caller = {
        origin: `http://127.0.0.1:${placeFor(SHARED_PORT).port}`,
        cookie: await newSession(shared(), people.learner.id),
      };
      const fields = { sittingId: id, place: '1', key: 'c'.repeat(32), option: 'a', flagged: 'yes' };
      for (const action of ['answerQuestion', 'saveAnswer', 'nextQuestion', 'flagQuestion', 'handInSitting']) {
        const { text } = await callAction(caller, `/learn/sittings/${id}`, action, fields);
        expect(text, action).toContain('There is no such thing here, or it is not yours.');
      }
      expect(await shared().select().from(sittingAnswers).where(eq(sittingAnswers.sittingId, id))).toEqual([]);
    }
    await page.goto('/learn/questions');
    await expect(page.locator(`a[href*="${beside}"]`)).toHaveCount(0);
  });
});

test.describe('on a phone', () => {
  test.use({ viewport: PHONE });

  test('nothing sticks out sideways of the ways in, of a long check and of its result', async ({ page }) => {
    await page.goto('/learn/questions');
    await expectNoOverflow(page);
    const id = await openSitting(
      Array.from({ length: 40 }, () => judged),
      {
        mode: 'check',
        closesAt: new Date(Date.now() + 600_000),
      },
    );
    await page.goto(`/learn/sittings/${id}`);
    await expectNoOverflow(page);
    await page.getByRole('button', { name: 'Hand it in' }).click();
    await expect(page.getByRole('heading', { name: 'How it went' })).toBeVisible();
    await page.getByRole('link', { name: /^Question 1:/ }).click();
    await expect(page.getByRole('heading', { name: 'How it comes about' })).toBeVisible();
    await expectNoOverflow(page);
  });
});

for (const { name, kind, form } of kindsAndForms)
  test(`axe finds nothing serious on ${name}, and on a phone nothing sticks out, before and after the answer`, async ({
    page,
  }) => {
    const spec = aSpec(kind, form, 'each');
    await page.goto(`/learn/sittings/${await openSitting([spec])}`);
    await expectClean(page);
    await page.setViewportSize(PHONE);
    await expectNoOverflow(page);
    await answerDrill(page, anAnswerTo(questionOf(spec), false));
    await expectNoOverflow(page);
    await page.setViewportSize({ width: 1280, height: 800 });
    await expectClean(page);
  });

test('axe finds nothing serious on the ways in, on a check and on its result', async ({ page }) => {
  await page.goto('/learn/questions');
  await expectClean(page);
  const id = await openSitting([judged, limit], { mode: 'check', closesAt: new Date(Date.now() + 200_000) });
  await page.goto(`/learn/sittings/${id}`);
  await page.getByRole('button', { name: 'Put a flag on it' }).click();
  await give(page, anAnswerTo(questionOf(judged)));
  await expect(page.getByText('Saved.')).toBeVisible();
  await expectClean(page);
  await page.getByRole('button', { name: 'Hand it in' }).click();
  await page.getByRole('link', { name: /^Question 1:/ }).click();
  await expect(page.getByRole('heading', { name: 'How it comes about' })).toBeVisible();
  await expectClean(page);
});

function listed(page: Page) {
  return page.getByRole('navigation', { name: 'Questions of this check' }).getByRole('link');
}

function optionsOf({ answer }: QuestionBody): string[] {
  return answer.form === 'choice' ? answer.options.map(({ id }) => id) : [];
}

/** Where the first right option stands, from 0. */
function rightOption(question: QuestionBody): number {
  const { key } = question;
  return key.form === 'choice' ? optionsOf(question).indexOf(key.right[0] ?? '') : -1;
}

/** A browser that knows nothing of the one before but who is signed in. */
async function another(browser: Browser): Promise<Page> {
  const context = await browser.newContext();
  const value = await newSession(shared(), people.learner.id);
  const url = `http://127.0.0.1:${placeFor(SHARED_PORT).port}`;
  await context.addCookies([{ name: SESSION_COOKIE, value: decodeURIComponent(value), url }]);
  return context.newPage();
}
