import { once } from 'node:events';
import { listActs } from '@/db/queries/acts';
import { codeOf } from '../support/case-codes';
import { people } from '../support/people';
import { freshData, openPlace, placeFor, SHARED_PORT, startServer, untilUp } from '../support/server';
import { expect, test } from './fixtures';
import {
  fillCall,
  fillFinding,
  findings,
  hookUp,
  makeCall,
  openAttempt,
  primePressureLow,
  startByCode,
  takeReading,
  weakLiftPump,
  writeFinding,
} from './learner';
import { signInAs } from './sign-in';

const code = codeOf('lift-pump-weak', 800);

test('a double click takes one reading', async ({ page }) => {
  const id = await openAttempt(page, code);
  await hookUp(page, primePressureLow.hookUp);
  await page.getByRole('button', { name: 'Take the reading' }).dblclick();
  await expect(page.getByRole('heading', { name: 'What it shows' })).toBeVisible();
  await page.waitForLoadState('networkidle');
  expect(await listActs(openPlace(placeFor(SHARED_PORT)), people.learner.id, id)).toHaveLength(1);
});

test('a reload and the back button show what was done and do nothing again', async ({ page }) => {
  const id = await openAttempt(page, code);
  await takeReading(page, primePressureLow.hookUp);
  await writeFinding(page, primePressureLow.finding);
  await page.reload();
  await expect(findings(page)).toHaveCount(1);
  await page.goBack();
  await expect(findings(page)).toHaveCount(1);
  await page.goForward();
  await expect(findings(page)).toHaveCount(1);
  expect(await listActs(openPlace(placeFor(SHARED_PORT)), people.learner.id, id)).toHaveLength(2);
});

test('two tabs work on one attempt, and the later one sees what the earlier one did', async ({ page, context }) => {
  await openAttempt(page, code);
  const second = await context.newPage();
  await second.goto(page.url());
  await takeReading(page, primePressureLow.hookUp);
  await takeReading(second, { check: /Air in the fuel/, condition: 'idle' });
  await expect(second.getByRole('region', { name: 'Findings' })).toContainText('Prime pressure, key on');
});

test('a reading judged in one tab is not judged again in another, and what was typed stays', async ({
  page,
  context,
}) => {
  await openAttempt(page, code);
  await takeReading(page, primePressureLow.hookUp);
  const second = await context.newPage();
  await second.goto(page.url());
  await fillFinding(second, primePressureLow.finding);
  await writeFinding(page, primePressureLow.finding);
  await second.getByRole('button', { name: 'Write it down' }).click();
  await expect(second.getByText('This reading is already judged')).toBeVisible();
  await expect(second.getByRole('radio', { name: 'Fail' })).toBeChecked();
});

test('the call is made once, and a second tab is told so', async ({ page, context }) => {
  await openAttempt(page, code);
  await takeReading(page, primePressureLow.hookUp);
  const second = await context.newPage();
  await second.goto(page.url());
  await makeCall(page, weakLiftPump);
  await fillCall(second, { ...weakLiftPump, cause: 'Main filter plugged' });
  await second.getByRole('button', { name: 'Make the call' }).click();
  await expect(second.getByText('The call is already made and this case is closed')).toBeVisible();
  await second.goto(page.url());
  await expect(second.getByRole('heading', { level: 1 })).toHaveText('Weak lift pump. You found it.');
});

test.describe('with a server that dies', () => {
  const place = placeFor(3132);
  test.use({ baseURL: `http://127.0.0.1:${place.port}`, forgiven: /ERR_CONNECTION_REFUSED/ });

  test('a killed server loses nothing that was written down, and the form keeps the rest', async ({ page }) => {
    await freshData(place);
    await signInAs(page, 'learner', { place });
    let server = startServer(place);
    try {
      await untilUp(place);
      await startByCode(page, code);
      await takeReading(page, primePressureLow.hookUp);
      await writeFinding(page, primePressureLow.finding);
      await hookUp(page, { check: /Air in the fuel/, condition: 'idle' });
      server.kill('SIGKILL');
      await once(server, 'exit');
      await page.getByRole('button', { name: 'Take the reading' }).click();
      await expect(page.getByText('Not taken: the server did not answer')).toBeVisible();
      await expect(page.getByLabel('Condition')).toHaveValue('idle');

      server = startServer(place);
      await untilUp(place);
      await page.getByRole('button', { name: 'Take the reading' }).click();
      await expect(page.getByRole('img', { name: /Clear hose/ })).toBeVisible();
      await page.reload();
      await expect(findings(page)).toHaveCount(1);
      await expect(page.getByRole('region', { name: 'Findings' })).toContainText('Air in the fuel, idle');
    } finally {
      server.kill('SIGKILL');
    }
  });
});
