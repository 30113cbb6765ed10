import { loadCatalogue } from '@/content/load';
import messages from '@/content/messages/en.json' with { type: 'json' };
import { addShown } from './at-certificates';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { expectNoOverflow } from './no-overflow';
import { signInNew, somebodyNew } from './somebody-new';

test.use({ as: null });

const { applications, applying, certificates, issuerKeys, verify } = messages;
const scheme = loadCatalogue().schemes.get('low-pressure-diagnosis');
const topics = scheme?.blueprint.map(({ topic }) => topic) ?? [];

test('somebody applies, somebody who did not teach them decides and makes it out, and whoever is shown it can check it', async ({
  page,
  browser,
}) => {
  const administrator = await somebodyNew('administrator');
  const learner = await somebodyNew('learner', administrator.organizationId);
  await addShown(learner, { topics });
  const theirs = await (await browser.newContext({ viewport: { width: 390, height: 800 } })).newPage();
  await signInNew(theirs, learner);
  await theirs.goto('/schemes/low-pressure-diagnosis');
  await theirs.getByRole('button', { name: applying.apply }).click();
  await expect(theirs.getByRole('button', { name: applying.withdraw })).toBeVisible();
  await expectNoOverflow(theirs);

  await signInNew(page, administrator);
  await page.goto('/schemes/applications');
  await page.getByRole('link', { name: learner.name }).click();
  await expect(page.getByText(applications.says.ready)).toBeVisible();
  await expectClean(page);
  await page.getByLabel(applications.reason).fill('Shown on every topic');
  await page.getByLabel(applications.confirm.safe).check();
  await page.getByLabel(applications.confirm.impartial).check();
  await page.getByRole('button', { name: applications.granted }).click();
  await expect(page.getByText('Shown on every topic')).toBeVisible();

  await page.goto('/certificates/keys');
  await page.getByRole('button', { name: issuerKeys.make }).click();
  await expect(page.getByRole('status')).toContainText(issuerKeys.made);
  await page.goto('/certificates');
  await page.getByLabel(certificates.comment).fill('Sound work');
  await page.getByRole('button', { name: certificates.issue }).click();
  await page.waitForURL(/\/certificates\/[0-9a-f]{20}$/);
  const id = page.url().split('/').at(-1) ?? '';

  await theirs.goto('/learn/certificates');
  await expect(theirs.locator(`a[href="/learn/certificates/${id}"]`)).toBeVisible();
  const anybody = await (await browser.newContext()).newPage();
  await anybody.goto(`/verify/${id}`);
  await expect(anybody.getByRole('main')).toContainText(verify.good);
  await expect(anybody.getByText(learner.name)).toHaveCount(0);
});
