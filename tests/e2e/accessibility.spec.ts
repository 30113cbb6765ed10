import { codeOf } from '../support/case-codes';
import { people } from '../support/people';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import {
  codeOfTwo,
  fillCall,
  fillFinding,
  makeCall,
  openAttempt,
  primePressureLow,
  takeReading,
  weakLiftPump,
  writeFinding,
} from './learner';

const code = codeOf('lift-pump-weak', 800);

test('axe finds nothing serious on the start page, the list and a fresh case', async ({ page }) => {
  await page.goto('/');
  await expectClean(page);
  await page.goto('/learn');
  await expectClean(page);
  await openAttempt(page, code);
  await expectClean(page);
});

test('axe finds nothing serious beside a gauge and on a finding half written', async ({ page }) => {
  await openAttempt(page, code);
  await takeReading(page, primePressureLow.hookUp);
  await fillFinding(page, primePressureLow.finding);
  await expectClean(page);
});

test('axe finds nothing serious beside a destroyed gauge and in a debrief', async ({ page }) => {
  await openAttempt(page, code);
  await takeReading(page, primePressureLow.hookUp);
  await writeFinding(page, primePressureLow.finding);
  await takeReading(page, { ...primePressureLow.hookUp, condition: 'idle' });
  await expectClean(page);
  await makeCall(page, weakLiftPump);
  await expectClean(page);
});

test('axe finds nothing serious beside a chart, with its table open', async ({ page }) => {
  await openAttempt(page, code);
  await takeReading(page, { check: 'crank-trace', condition: 'cranking' });
  await page.getByText('The same as a table').click();
  await expectClean(page);
});

test('axe finds nothing serious beside a swinging needle and on what an eye sees', async ({ page }) => {
  await openAttempt(page, codeOf('suction-air-leak', 400));
  await takeReading(page, primePressureLow.hookUp);
  await expect(page.getByText(/needle swings ±/)).toBeVisible();
  await expectClean(page);
  await takeReading(page, { check: 'fuel-sample', condition: 'key off' });
  await expectClean(page);
});

test('axe finds nothing serious after a jet, on a second cause and in the debrief of two', async ({ page }) => {
  await openAttempt(
    page,
    codeOfTwo({ cause: 'lift-pump-weak', severity: 700 }, { cause: 'rail-sensor-reads-high', severity: 500 }),
  );
  await takeReading(page, { check: 'high-pressure-fitting', condition: 'idle' });
  await page.getByText('Easy to get wrong').click();
  await page.getByText('I think there are two causes').click();
  await expectClean(page);
  await fillCall(page, weakLiftPump);
  await page.getByRole('button', { name: 'Make the call' }).click();
  await page.waitForURL(/\/debrief$/);
  await expectClean(page);
});

test.describe('for whoever is not signed in', () => {
  test.use({ as: null });

  test('axe finds nothing serious on the ways in', async ({ page }) => {
    for (const path of ['/sign-in', '/join', '/invited/none', '/reset/none']) {
      await page.goto(path);
      await expectClean(page);
    }
  });
});

test.describe('for a keeper', () => {
  test.use({ as: 'keeper' });

  test('axe finds nothing serious on the pages about people', async ({ page }) => {
    const person = `/people/${people.secondLearner.id}`;
    const ofPerson = [person, `${person}/merge`, `${person}/erase`];
    for (const path of ['/people', '/people/add', '/people/import', ...ofPerson, '/classes', '/me']) {
      await page.goto(path);
      await expectClean(page);
    }
  });

  test('axe finds nothing serious on the log, the settings and the upkeep', async ({ page }) => {
    for (const path of ['/log', '/settings', '/upkeep']) {
      await page.goto(path);
      await expectClean(page);
    }
  });
});
