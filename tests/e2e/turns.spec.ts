import { once } from 'node:events';
import { eq } from 'drizzle-orm';
import { nudges, sittings, turns } from '@/db/schema';
import { newSession, SESSION_COOKIE } from '../support/people';
import { freshData, openPlace, placeFor, startServer, untilUp } from '../support/server';
import { aSetBody } from '../support/teaching-rows';
import { assign, beginTurn, openCase, press } from './at-assignments';
import { shared } from './at-questions';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { primePressureLow, takeReading } from './learner';
import { expectNoOverflow } from './no-overflow';
import { expectNotThere } from './not-yours-alike';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';
import { tabTo } from './tabbing';

const body = aSetBody({ title: 'Supply side, assessed', note: 'Bring your job card.' });

test('a learner reads what is asked, does a turn by keyboard and hands it in', async ({ page }) => {
  const somebody = await somebodyNew('learner');
  const assignmentId = await assign({
    to: [{ who: somebody, extraTime: 0.25 }],
    body,
    rules: { minutes: 60, late: { hours: 24, cost: 20 } },
  });
  await signInNew(page, somebody);
  await page.goto('/learn');
  await page.getByRole('link', { name: body.title }).click();
  await expect(page.getByText('75 minutes from when it is begun')).toBeVisible();
  await expect(page.getByText('15 of these minutes are yours on top')).toBeVisible();
  await expect(page.getByText('Bring your job card.')).toBeVisible();
  await expectClean(page, 'assignment');
  await page.setViewportSize({ width: 390, height: 800 });
  await expectNoOverflow(page);
  await tabTo(page, page.getByRole('button', { name: 'Begin' }));
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/learn\/turns\/\w+$/);
  const turnUrl = page.url();
  await expect(page.getByRole('timer')).toContainText(/1 hour|74 min|75 min/);
  await expectClean(page, 'turn');
  await expectNoOverflow(page);

  const sentAt = new Date();
  await shared()
    .insert(nudges)
    .values({
      id: `nudge-${assignmentId}`,
      assignmentId,
      userId: somebody.id,
      text: 'Read the hose again.',
      sentBy: 'x',
      sentAt,
    });
  await expect(page.getByText('Read the hose again.')).toBeVisible();
  await tabTo(page, page.getByRole('button', { name: 'Read' }));
  await page.keyboard.press('Enter');
  await expect(page.getByText('Read the hose again.')).toBeHidden();
  await page.setViewportSize({ width: 1280, height: 800 });

  await tabTo(page, page.getByRole('button', { name: 'Open case 1' }));
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/learn\/cases\/\w+/);
  await takeReading(page, primePressureLow.hookUp);
  await page.getByRole('link', { name: `Back to ${body.title}` }).click();
  await expect(page.getByText('opened, no call yet')).toBeVisible();
  await page.getByRole('link', { name: 'Answer question 2' }).click();
  await expect(page.getByRole('heading', { name: `Questions of ${body.title}` })).toBeVisible();
  await page.getByRole('link', { name: 'Back to the turn' }).click();
  await page.waitForURL(turnUrl);
  await expect(page.getByText('Tasks 1, 2 are not done.')).toBeVisible();
  await tabTo(page, page.getByRole('button', { name: 'Hand in this turn' }));
  await page.keyboard.press('Enter');
  await expect(page.getByText('How it went is told from')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Hand in this turn' })).toHaveCount(0);
  await expectClean(page, 'handed in');
});

test('when the time is over nothing more is taken, and the turn is handed in as it stands', async ({ page }) => {
  const somebody = await somebodyNew('learner');
  const assignmentId = await assign({ to: [{ who: somebody }], body, rules: { minutes: 30 } });
  const turnId = await beginTurn(somebody, assignmentId);
  const attemptId = await openCase(somebody, turnId);
  const ended = new Date(Date.now() - 20_000);
  await shared().update(turns).set({ endsAt: ended }).where(eq(turns.id, turnId));
  await shared()
    .update(sittings)
    .set({ closesAt: ended })
    .where(eq(sittings.key, `turn ${turnId}`));
  const hookUp = { check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' };
  const { text } = await press(somebody, `/learn/cases/${attemptId}`, 'takeReading', { attemptId, ...hookUp });
  expect(text).toContain('the time of this turn is over');
  await signInNew(page, somebody);
  await page.goto('/learn');
  const [row] = await shared().select().from(turns).where(eq(turns.id, turnId));
  expect(row?.handedInAt).toEqual(ended);
  await page.goto(`/learn/cases/${attemptId}`);
  await expect(page.getByText('No call was made.')).toBeVisible();
  await page.getByRole('link', { name: 'Back to the turn' }).click();
  await expect(page.getByText('not done').first()).toBeVisible();
});

test('work that comes late is taken with what it costs, and before it opens nothing begins', async ({ page }) => {
  const somebody = await somebodyNew('learner');
  const to = [{ who: somebody }];
  const questions = aSetBody({ title: 'Late', items: body.items.slice(1) });
  const late = await assign({
    to,
    body: questions,
    closes: -10,
    rules: { mode: 'practice', late: { hours: 24, cost: 20 } },
  });
  const coming = await assign({ to, body, opens: 60 });
  const closed = await assign({ to, body, closes: -10 });
  for (const [assignmentId, words] of [
    [coming, 'has not opened yet'],
    [closed, 'It is closed'],
  ] as const) {
    const { text } = await press(somebody, `/learn/assignments/${assignmentId}`, 'beginTurn', { assignmentId });
    expect(text).toContain(words);
  }
  await signInNew(page, somebody);
  await page.goto(`/learn/assignments/${late}`);
  await expect(page.getByText('A turn begun now loses 20 of each hundred points.')).toBeVisible();
  await page.getByRole('button', { name: 'Begin' }).click();
  await expect(page.getByText('Handed in now, this turn loses 20')).toBeVisible();
  await page.getByRole('button', { name: 'Hand in this turn' }).click();
  await expect(page.getByText('It came late: 20 of each hundred points are taken off.')).toBeVisible();
  await expect(page.getByText('0 of 100').first()).toBeVisible();
});

test('somebody else’s turn and assignment look the same as none', async ({ page }) => {
  const [mine, theirs] = [await somebodyNew('learner'), await somebodyNew('learner')];
  const assignmentId = await assign({ to: [{ who: theirs }], body });
  const turnId = await beginTurn(theirs, assignmentId);
  await signInNew(page, mine);
  await expectNotThere(page.request, turnId, (id) => `/learn/turns/${id}`);
  await expectNotThere(page.request, assignmentId, (id) => `/learn/assignments/${id}`);
  for (const [action, fields] of [
    ['openTask', { turnId, place: '1' }],
    ['handInTurn', { turnId }],
    ['readMessage', { turnId, messageId: 'any' }],
    ['beginTurn', { assignmentId }],
  ] as const) {
    const path = action === 'beginTurn' ? '/learn/assignments/none' : '/learn/turns/none';
    expect((await press(mine, path, action, fields)).text).toContain('There is no such thing here');
  }
});

test('a killed server loses nothing of a turn', async () => {
  const place = placeFor(3142);
  await freshData(place);
  const db = openPlace(place);
  let server = startServer(place, { FAULTWRIGHT_LOG: 'silent' });
  try {
    await untilUp(place);
    const somebody: Somebody = await somebodyNew('learner', undefined, db);
    const assignmentId = await assign({ to: [{ who: somebody }], body, db });
    const at = { port: place.port, db };
    const turnId = await beginTurn(somebody, assignmentId, at);
    const attemptId = await openCase(somebody, turnId, 1, at);
    const hookUp = { check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' };
    const taken = await press(somebody, `/learn/cases/${attemptId}`, 'takeReading', { attemptId, ...hookUp }, at);
    expect(taken.text).toContain('"done":true');
    const gone = once(server, 'exit');
    server.kill('SIGKILL');
    await gone;
    server = startServer(place, { FAULTWRIGHT_LOG: 'silent' });
    await untilUp(place);
    expect(await openCase(somebody, turnId, 1, at)).toBe(attemptId);
    const cookie = await newSession(db, somebody.id, somebody.organizationId);
    const headers = { Cookie: `${SESSION_COOKIE}=${cookie}` };
    const turn = await fetch(`http://127.0.0.1:${place.port}/learn/turns/${turnId}`, { headers });
    expect(await turn.text()).toContain('opened, no call yet');
    const theCase = await fetch(`http://127.0.0.1:${place.port}/learn/cases/${attemptId}?reading=1`, { headers });
    expect(await theCase.text()).toContain('What it shows');
  } finally {
    server.kill('SIGKILL');
  }
});
