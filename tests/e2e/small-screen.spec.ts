import { codeOf } from '../support/case-codes';
import { expect, test } from './fixtures';
import { makeCall, openAttempt, primePressureLow, takeReading, weakLiftPump, writeFinding } from './learner';
import { expectNoOverflow } from './no-overflow';

test.use({ viewport: { width: 390, height: 844 } });

test('a learner finishes a case on a phone, and nothing sticks out sideways', async ({ page }) => {
  await page.goto('/');
  await expectNoOverflow(page);
  await openAttempt(page, codeOf('lift-pump-weak', 800));
  await expectNoOverflow(page);
  await takeReading(page, primePressureLow.hookUp);
  await expect(page.getByRole('heading', { name: 'What it shows' })).toBeInViewport();
  await expectNoOverflow(page);
  await writeFinding(page, primePressureLow.finding);
  await expectNoOverflow(page);
  await makeCall(page, weakLiftPump);
  await expectNoOverflow(page);
});

test('on a phone the order is work order, drawing, hook-up, findings, call', async ({ page }) => {
  await openAttempt(page, codeOf('lift-pump-weak', 800));
  const tops = [];
  for (const name of [/^Cranks long/, 'Fuel system', 'Hook up', 'Findings', 'Make the call'])
    tops.push((await page.getByRole('region', { name }).boundingBox())?.y ?? Number.NaN);
  expect(tops).toEqual([...tops].sort((a, b) => a - b));
});

test('every control on a phone is at least 44 pixels high', async ({ page }) => {
  await openAttempt(page, codeOf('lift-pump-weak', 800));
  await takeReading(page, primePressureLow.hookUp);
  const controls = page.locator('main :is(button, select, input:not([type=hidden]), textarea, a, summary)');
  // What is folded away has no height and cannot be hit either.
  for (const control of await controls.filter({ visible: true }).all()) {
    const label = control.locator('xpath=ancestor-or-self::label[1]');
    const target = (await control.getAttribute('type'))?.match(/radio|checkbox/) ? label : control;
    const box = await target.boundingBox();
    expect(box?.height, await control.evaluate((element) => element.outerHTML.slice(0, 120))).toBeGreaterThanOrEqual(
      44,
    );
  }
});

test('at 360 pixels nothing sticks out sideways either', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await openAttempt(page, codeOf('lift-pump-weak', 800));
  await takeReading(page, { check: /^D1 Rail pressure 6/, condition: 'idle' });
  await expectNoOverflow(page);
  await takeReading(page, { check: 'crank-trace', condition: 'cranking' });
  await expect(page.getByRole('img', { name: /a division is/ })).toBeVisible();
  await page.getByText('The same as a table').click();
  await expectNoOverflow(page);
});
