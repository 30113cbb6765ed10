import jsQr from 'jsqr';
import sharp from 'sharp';
import { catalogue } from '../support/bench-rig';
import { codeOf } from '../support/case-codes';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { expectNoOverflow } from './no-overflow';
import { signInNew, somebodyNew } from './somebody-new';

const code = codeOf('lift-pump-weak', 800);
const cause = catalogue.causes.get('lift-pump-weak')?.text.en.name ?? 'no name';

test('a case is printed without what is wrong, its key with it, and the square code leads to practising it', async ({
  page,
}) => {
  await signInNew(page, await somebodyNew('instructor'));
  await page.goto('/paper');
  await page.getByLabel('Case code').fill('nonsense');
  await page.getByRole('button', { name: 'Find it' }).click();
  await expect(page.getByRole('alert').first()).toBeVisible();
  await expect(page.getByLabel('Case code')).toHaveValue('nonsense');
  await page.getByLabel('Case code').fill(code);
  await page.getByRole('button', { name: 'Find it' }).click();
  await page.getByRole('link', { name: 'Case sheet' }).click();
  await expect(page.getByRole('table', { name: 'Readings' })).toBeVisible();
  const sheet = await (await page.request.get(`/paper/${code}`)).text();
  expect(sheet).not.toContain('lift-pump-weak');
  expect(sheet).not.toContain(cause);
  const picture = await page.getByRole('img', { name: /^Square code/ }).screenshot();
  const { data, info } = await sharp(picture).resize(400).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  const read = jsQr(new Uint8ClampedArray(data), info.width, info.height);
  const target = new URL(read?.data ?? '');
  expect(target.pathname + target.search).toBe(`/learn?code=${code}`);
  await page.goto(target.pathname + target.search);
  await expect(page.locator('input[name=code]')).toHaveValue(code);
  await page.goto(`/paper/${code}/key`);
  await expect(page.getByText(cause).first()).toBeVisible();
  await expectClean(page);
  await page.setViewportSize({ width: 360, height: 740 });
  for (const address of [`/paper/${code}`, `/paper/${code}/key`]) {
    await page.goto(address);
    await expectNoOverflow(page);
  }
});

test('paper is not for learners, and what is no code is not there', async ({ page }) => {
  const instructor = await somebodyNew('instructor');
  await signInNew(page, await somebodyNew('learner', instructor.organizationId));
  for (const address of ['/paper', `/paper/${code}`, `/paper/${code}/key`])
    expect((await page.request.get(address)).status(), address).toBe(404);
  await signInNew(page, instructor);
  expect((await page.request.get('/paper/no-such')).status()).toBe(404);
});
