import type { Page } from '@playwright/test';
import { listActs } from '@/db/queries/acts';
import { codeOf } from '../support/case-codes';
import { people } from '../support/people';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';
import { expect, test } from './fixtures';
import { fillFinding, hookUp, openAttempt, primePressureLow, takeReading } from './learner';

const code = codeOf('lift-pump-weak', 800);

test('a mistyped case code is answered with what is wrong, and stays in the field', async ({ page }) => {
  await page.goto('/learn');
  const field = page.getByLabel('Case code');
  const start = page.getByRole('button', { name: 'Start this case' });
  for (const [typed, answer] of [
    ['hello', 'is not a case code'],
    [`${code.slice(0, -1)}${code.endsWith('0') ? '1' : '0'}`, 'typing mistake'],
    ['💥 '.repeat(60), 'is not a case code'],
  ] as const) {
    await field.fill(typed);
    await start.click();
    await expect(page.getByText(answer)).toBeVisible();
    await expect(field).toHaveValue(typed);
  }
});

test('a check, a condition or an instrument that does not exist is refused and changes nothing', async ({ page }) => {
  const id = await openAttempt(page, code);
  await hookUp(page, primePressureLow.hookUp);
  for (const [field, value, answer] of [
    ['check', 'boost-pressure', 'There is no check “boost-pressure”'],
    ['condition', 'full-load', 'cannot be done at “full load”'],
    ['condition', 'flat out', 'cannot be done at “flat out”'],
    ['instrument', 'crystal-ball', 'There is no instrument “crystal-ball”'],
    ['instrument', 'clear-hose', 'Clear hose does not fit this check'],
    ['check', '', 'Missing or not usable: check'],
    ['check', 'x'.repeat(5000), 'Missing or not usable: check'],
  ] as const) {
    await tamper(page, field, value);
    await page.getByRole('button', { name: 'Take the reading' }).click();
    await expect(page.getByText(answer)).toBeVisible();
    await tamper(page, 'check', 'prime-pressure');
    await page.getByLabel('Instrument').selectOption('dial-0-30-psi');
    await page.getByLabel('Condition').selectOption('key-on');
  }
  expect(await actsOf(id)).toHaveLength(0);
});

test('a destroyed gauge cannot be read again', async ({ page }) => {
  const id = await openAttempt(page, code);
  await takeReading(page, { ...primePressureLow.hookUp, condition: 'idle' });
  await page
    .getByRole('option', { name: /0–30 psi.*destroyed/ })
    .evaluate((option) => option.removeAttribute('disabled'));
  await page.getByLabel('Instrument').selectOption('dial-0-30-psi');
  await page.getByLabel('Condition').selectOption('key-on');
  await page.getByRole('button', { name: 'Take the reading' }).click();
  await expect(page.getByText('was destroyed earlier in this case')).toBeVisible();
  expect(await actsOf(id)).toHaveLength(1);
});

test('a value that is no number, or could be two, is refused and stays as typed', async ({ page }) => {
  const id = await openAttempt(page, code);
  await takeReading(page, primePressureLow.hookUp);
  await fillFinding(page, primePressureLow.finding);
  const value = page.getByLabel('What does it read?');
  for (const [typed, answer] of [
    ['six', '“six” is not a number'],
    ['1,150', 'could mean a thousand or a fraction'],
    ['1e999', '“1e999” is not a number'],
  ] as const) {
    await value.fill(typed);
    await page.getByRole('button', { name: 'Write it down' }).click();
    await expect(page.getByText(answer)).toBeVisible();
    await expect(value).toHaveValue(typed);
  }
  expect(await actsOf(id)).toHaveLength(1);
});

test('a finding that contradicts itself or judges nothing is refused', async ({ page }) => {
  const id = await openAttempt(page, code);
  await takeReading(page, primePressureLow.hookUp);
  await fillFinding(page, primePressureLow.finding);
  const write = page.getByRole('button', { name: 'Write it down' });
  const both = page.getByRole('group', { name: 'That clears' }).getByLabel('priming');
  await both.check();
  await write.click();
  await expect(page.getByText('look at priming')).toBeVisible();
  await both.uncheck();
  for (const [field, value, answer] of [
    ['reading', '7', 'There is no such reading'],
    ['quantity', 'mood', 'There is no such reading'],
    ['verdict', 'maybe', 'Missing or not usable: verdict'],
    ['unit', 'mL/min', '“mL/min” does not fit'],
    ['limit', 'sky', 'no such line on the limit sheet'],
  ] as const) {
    const before = await tamper(page, field, value);
    await write.click();
    await expect(page.getByText(answer)).toBeVisible();
    await tamper(page, field, before);
  }
  expect(await actsOf(id)).toHaveLength(1);
});

test.describe('with more than there is room for', () => {
  test.use({ forgiven: /Failed to load resource/ });

  test('words that are too long, and a body that is far too long, are refused and kept in the form', async ({
    page,
  }) => {
    const id = await openAttempt(page, code);
    await takeReading(page, primePressureLow.hookUp);
    await fillFinding(page, primePressureLow.finding);
    const words = page.getByLabel('In your own words');
    await words.evaluate((element) => element.removeAttribute('maxlength'));
    await words.fill('x'.repeat(1001));
    await page.getByRole('button', { name: 'Write it down' }).click();
    await expect(page.getByText('1,001 characters long; there is room for 1,000')).toBeVisible();
    await words.fill('x'.repeat(100_000));
    await page.getByRole('button', { name: 'Write it down' }).click();
    await expect(page.getByText('Not written down: the server did not answer as it should')).toBeVisible();
    await expect(words).toHaveValue(/^x{100000}$/);
    expect(await actsOf(id)).toHaveLength(1);
  });
});

/** Puts a value into a field that the page does not offer. @returns what stood there. */
async function tamper(page: Page, field: string, value: string): Promise<string> {
  const form = page.getByRole('button', { name: /Take the reading|Write it down/ }).first();
  return form.evaluate(
    (button, { field: name, value: wanted }) => {
      const control = (button as HTMLButtonElement).form?.querySelector<HTMLInputElement | HTMLSelectElement>(
        `[name="${name}"]:is(select, :checked, [type=hidden])`,
      );
      if (!control) throw new Error(`No field ${name}`);
      const before = control.value;
      if (control instanceof HTMLSelectElement && ![...control.options].some((option) => option.value === wanted))
        control.add(new Option(wanted, wanted));
      control.value = wanted;
      return before;
    },
    { field, value },
  );
}

function actsOf(id: string) {
  return listActs(openPlace(placeFor(SHARED_PORT)), people.learner.id, id);
}
