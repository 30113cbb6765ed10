import { expectClean } from './clean';
import { expect, test } from './fixtures';

test('the topics stand in their order, each with its checks and a case to start', async ({ page }) => {
  await page.goto('/learn');
  await page.getByRole('link', { name: 'What the topics are about' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Topics');
  const names = page.getByRole('heading', { level: 2 });
  await expect(names.first()).toHaveText('Safe working and isolation');
  const filtration = page.getByRole('region', { name: 'Filtration' });
  await expect(filtration.getByText('Main-filter drop')).toBeVisible();
  await filtration.getByRole('button', { name: 'Start a case: Filtration' }).click();
  await page.waitForURL(/\/learn\/cases\/[0-9a-f]{20}$/);
});

test('a link to a topic leads to it', async ({ page }) => {
  await page.goto('/learn/topics#fuel-quality');
  await expect(page.getByRole('heading', { name: 'Fuel quality' })).toBeInViewport();
});

test('axe finds nothing serious on the topics and on the start forms, in both themes', async ({ page }) => {
  for (const path of ['/learn/topics', '/learn']) {
    await page.goto(path);
    await expectClean(page, path);
  }
});

test('on a narrow screen nothing of the topics hangs over', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 });
  for (const path of ['/learn/topics', '/learn']) {
    await page.goto(path);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  }
});
