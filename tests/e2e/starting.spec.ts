import { findAttempt } from '@/db/queries/attempts';
import { difficultyBands } from '@/lib/wishes/difficulty-bands';
import { codeOf } from '../support/case-codes';
import { people } from '../support/people';
import { openPlace, placeFor, SHARED_PORT } from '../support/server';
import { expect, test } from './fixtures';

const STARTED = /\/learn\/cases\/[0-9a-f]{20}$/;

function attemptAt(url: string) {
  return findAttempt(openPlace(placeFor(SHARED_PORT)), people.learner.id, url.split('/').at(-1) ?? '');
}

test('a case is started as wished, and how hard it is stays with the attempt', async ({ page }) => {
  await page.goto('/learn');
  await page.getByLabel('System').selectOption('petrel-15');
  await page.getByLabel('Topic').selectOption({ label: 'Filtration' });
  await page.getByLabel('How hard for its level').selectOption({ label: 'In the middle' });
  await page.getByRole('button', { name: 'Start a random case' }).click();
  await page.waitForURL(STARTED);
  await expect(page.getByText(/Petrel 15/).first()).toBeVisible();
  const attempt = await attemptAt(page.url());
  expect(attempt).toMatchObject({ coached: false, features: { masked: false } });
  const [from, to] = difficultyBands(false).middle;
  expect(attempt?.difficulty).toBeGreaterThanOrEqual(from);
  expect(attempt?.difficulty).toBeLessThanOrEqual(to);
});

test('a wish that no case meets is named, and the form keeps its choices', async ({ page }) => {
  const form = page.getByRole('region', { name: 'A new case' });
  const answer = form.getByRole('alert').getByText(/is as hard as you wished for: “Easier”/);
  // A plugged filter takes more than one check to find, so that hardly any is easy; whoever has such luck tries again.
  for (let tries = 0; tries < 4 && !(await answer.isVisible()); tries++) {
    await page.goto('/learn');
    await form.getByLabel('System').selectOption('petrel-15');
    await form.getByLabel('Topic').selectOption('filtration');
    await form.getByLabel('How hard for its level').selectOption('easier');
    await form.getByLabel('Coached').check();
    await form.getByRole('button', { name: 'Start a random case' }).click();
    await Promise.race([answer.waitFor(), page.waitForURL(STARTED)]);
  }
  await expect(answer).toBeVisible();
  await expect(form.getByLabel('System')).toHaveValue('petrel-15');
  await expect(form.getByLabel('Topic')).toHaveValue('filtration');
  await expect(form.getByLabel('How hard for its level')).toHaveValue('easier');
  await expect(form.getByLabel('Coached')).toBeChecked();
});

test('a system or a topic that there is not is refused by name', async ({ page }) => {
  await page.goto('/learn');
  const form = page.getByRole('region', { name: 'A new case' });
  for (const [field, value, answer] of [
    ['rig', 'heron-9', 'There is no system “heron-9”'],
    ['topic', 'welding', 'There is no topic “welding”'],
    ['level', 'impossible', 'Missing or not usable: how hard'],
    ['difficulty', 'trivial', 'Missing or not usable: how hard for its level'],
  ] as const) {
    const select = form.locator(`select[name=${field}]`);
    await select.evaluate((element, wanted) => {
      const list = element as HTMLSelectElement;
      list.add(new Option(wanted, wanted));
      list.value = wanted;
    }, value);
    await form.getByRole('button', { name: 'Start a random case' }).click();
    await expect(form.getByRole('alert')).toContainText(answer);
    await select.selectOption({ index: 0 });
  }
});

test('a code whose case cannot be settled is refused, and stays in the field', async ({ page }) => {
  await page.goto('/learn');
  // Nothing is broken at severity 0: no check could ever show the cause.
  const code = codeOf('suction-air-leak', 0, 'same-bytes');
  await page.getByLabel('Case code').fill(code);
  await page.getByRole('button', { name: 'Start this case' }).click();
  await expect(page.getByText('cannot be settled with the checks there are, so it is not given')).toBeVisible();
  await expect(page.getByLabel('Case code')).toHaveValue(code);
});

test('a case by its code may be coached', async ({ page }) => {
  await page.goto('/learn');
  const form = page.getByRole('region', { name: 'A case by its code' });
  await form.getByLabel('Case code').fill(codeOf('lift-pump-weak', 800));
  await form.getByLabel('Coached').check();
  await form.getByRole('button', { name: 'Start this case' }).click();
  await page.waitForURL(STARTED);
  await expect(page.getByRole('button', { name: 'Give me a hint' })).toBeVisible();
  expect(await attemptAt(page.url())).toMatchObject({ coached: true });
});
