import { college, harbour } from '../support/people';
import { expect, test } from './fixtures';

test.use({ as: 'both', forgiven: /404/ });

test('somebody in two organisations is in each what that one made them', async ({ page }) => {
  await page.goto('/learn');
  const choice = page.getByRole('combobox', { name: 'Organisation' });
  await expect(choice.getByRole('option', { selected: true })).toHaveText(college.name);
  await page.getByRole('link', { name: 'People' }).click();
  await expect(page.getByText('sam@test-college')).toBeVisible();
  await expect(page.getByText('lea@test-harbour')).toHaveCount(0);

  await choice.selectOption(harbour.name);
  await expect(page.getByRole('link', { name: 'People' })).toHaveCount(0);
  await page.goto('/people');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('There is nothing here for you');

  await page.goto('/me');
  await expect(page.getByText(`${college.name}: instructor`)).toBeVisible();
  await expect(page.getByText(`${harbour.name}: learner`)).toBeVisible();
  await choice.selectOption(college.name);
  await expect(page.getByRole('link', { name: 'People' })).toBeVisible();
});
