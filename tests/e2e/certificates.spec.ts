import type { Browser, Page } from '@playwright/test';
import messages from '@/content/messages/en.json' with { type: 'json' };
import { readCredential } from '@/lib/certificates/read-credential';
import { signCertificate } from '@/lib/certificates/sign-certificate';
import { decodedList, statusAt } from '@/lib/certificates/status-list';
import { aKey, DAY } from '../support/certificates';
import { readPdf } from '../support/read-pdf';
import { addGranted, addOldKey, addShown, scheme } from './at-certificates';
import { expectClean } from './clean';
import { expect, test } from './fixtures';
import { expectNoOverflow } from './no-overflow';
import { expectNotThere } from './not-yours-alike';
import { type Somebody, signInNew, somebodyNew } from './somebody-new';

test.use({ as: null });

const words = messages.verify;
let administrator: Somebody;
let learner: Somebody;

test.beforeEach(async ({ page }) => {
  administrator = await somebodyNew('administrator');
  learner = await somebodyNew('learner', administrator.organizationId);
  await addShown(learner);
  await addGranted(learner);
  await signInNew(page, administrator);
});

/** A page of somebody's; of nobody's without one. */
async function pageOf(browser: Browser, who?: Somebody): Promise<Page> {
  const page = await (await browser.newContext()).newPage();
  if (who) await signInNew(page, who);
  return page;
}

/** Makes a key and a certificate. @returns its number. */
async function issue(page: Page): Promise<string> {
  await page.goto('/certificates/keys');
  await page.getByRole('button', { name: messages.issuerKeys.make }).click();
  await expect(page.getByRole('status')).toContainText(messages.issuerKeys.made);
  await page.goto('/certificates');
  await page.getByLabel(messages.certificates.comment).fill('Solid work over the whole of spring');
  await page.getByRole('button', { name: messages.certificates.issue }).click();
  await page.waitForURL(/\/certificates\/[0-9a-f]{20}$/);
  return page.url().split('/').at(-1) ?? '';
}

async function act(page: Page, id: string, name: 'suspended' | 'lifted' | 'revoked', reason: string): Promise<void> {
  await page.goto(`/certificates/${id}`);
  await page.getByText(messages.certificates.acts[name], { exact: true }).first().click();
  const form = page.locator('form').filter({ has: page.locator(`input[value="${name}"]`) });
  await form.getByLabel(messages.certificates.reason).fill(reason);
  await form.getByRole('button').click();
  await expect(page.getByRole('listitem').filter({ hasText: reason })).toBeVisible();
}

async function copyOf(page: Page, id: string): Promise<string> {
  const answer = await page.request.get(`/learn/certificates/${id}/signed`);
  expect(answer.headers()['content-type']).toContain('application/vc+jwt');
  return answer.text();
}

/** What the page says of a text that somebody was handed. */
async function said(page: Page, text: string, more: Readonly<Record<string, string>> = {}): Promise<string> {
  await page.goto('/verify');
  await page.getByLabel(words.text).fill(text);
  for (const [label, value] of Object.entries(more)) await page.getByLabel(label, { exact: true }).fill(value);
  await page.getByRole('button', { name: words.check }).click();
  const status = page.getByRole('status');
  await expect(status).toContainText(new RegExp(`${words.good}|${words.refused}`));
  return (await status.textContent()) ?? '';
}

function payloadOf(compact: string) {
  return JSON.parse(Buffer.from(compact.split('.')[1] ?? '', 'base64url').toString());
}

test('a certificate is good until it is suspended, again once that is lifted, with a new key too, and never once it is revoked', async ({
  page,
  browser,
}) => {
  test.slow();
  const id = await issue(page);
  const [holder, visitor] = [await pageOf(browser, learner), await pageOf(browser)];
  const copy = await copyOf(holder, id);
  expect(await said(visitor, copy)).toContain(words.good);

  await act(page, id, 'suspended', 'An appeal is open');
  expect(await said(visitor, copy)).toContain(words.refusals.suspended.replace('{reason}', 'An appeal is open'));
  await visitor.goto(`/verify/${id}`);
  await expect(visitor.getByRole('main')).toContainText('An appeal is open');
  const { credentialStatus } = payloadOf(copy);
  expect(await statusIn(visitor, credentialStatus.statusListCredential, credentialStatus.statusListIndex)).toBe(true);
  expect(await statusIn(visitor, credentialStatus.statusReference, credentialStatus.statusListIndex)).toBe(false);

  await act(page, id, 'lifted', 'The appeal was heard');
  expect(await said(visitor, copy)).toContain(words.good);
  expect(await statusIn(visitor, credentialStatus.statusListCredential, credentialStatus.statusListIndex)).toBe(false);

  await page.goto('/certificates/keys');
  await page.getByRole('button', { name: messages.issuerKeys.make }).click();
  await expect(page.getByText(messages.issuerKeys.retired, { exact: true })).toBeVisible();
  expect(await said(visitor, copy)).toContain(words.good);

  await act(page, id, 'revoked', 'Somebody else sat the check');
  expect(await said(visitor, copy)).toContain('Somebody else sat the check');
  expect(await statusIn(visitor, credentialStatus.statusReference, credentialStatus.statusListIndex)).toBe(true);
  await page.goto('/log');
  for (const event of [
    'issuer-key-made',
    'certificate-issued',
    'certificate-suspended',
    'certificate-lifted',
    'certificate-revoked',
  ] as const)
    await expect(page.getByRole('main')).toContainText(
      messages.log.sentences[event].replace('{actor}', administrator.name).replace('{person}', learner.name),
    );
});

async function statusIn(page: Page, address: string, place: string): Promise<boolean | undefined> {
  const { pathname } = new URL(address);
  const answer = await page.request.get(pathname);
  expect(answer.headers()['content-type']).toContain('application/vc+jwt');
  const bits = decodedList(payloadOf(await answer.text()).credentialSubject.encodedList);
  return bits && statusAt(bits, Number(place));
}

test('what was changed, ran out, is signed by another or is not on record is refused with its reason', async ({
  page,
  browser,
}) => {
  const id = await issue(page);
  const [holder, visitor] = [await pageOf(browser, learner), await pageOf(browser)];
  const copy = await copyOf(holder, id);
  const read = readCredential(payloadOf(copy));
  if (!read.ok) throw new Error(read.at);
  const { certificate } = read.read;
  const [header, , signature] = copy.split('.');
  const changed = Buffer.from(JSON.stringify({ ...payloadOf(copy), exp: 4_102_444_800 })).toString('base64url');
  expect(await said(visitor, `${header}.${changed}.${signature}`)).toContain(words.refusals.tampered);
  expect(await said(visitor, 'no certificate')).toContain(words.refusals.unreadable);

  const stranger = await aKey();
  expect(await said(visitor, await signCertificate(certificate, stranger.signs, Date.now()))).toContain(
    words.refusals['unknown-key'],
  );
  const old = await addOldKey(administrator.organizationId, new URL(certificate.issuer.id).origin);
  const signedBefore = Date.now() - 400 * DAY;
  const over = {
    ...certificate,
    validFrom: certificate.validFrom - 800 * DAY,
    validUntil: certificate.validFrom - 2 * DAY,
  };
  expect(await said(visitor, await signCertificate(over, old.signs, signedBefore))).toContain('It ran out on');
  expect(await said(visitor, await signCertificate(certificate, old.signs, Date.now()))).toContain(
    words.refusals['wrong-key'],
  );
  const unknown = { ...certificate, id: certificate.id.replace(id, '0'.repeat(20)) };
  expect(await said(visitor, await signCertificate(unknown, old.signs, signedBefore))).toContain(
    words.refusals['not-ours'],
  );
  const elsewhere = { ...certificate, issuer: { id: 'https://elsewhere.example/issuers/1', name: 'Elsewhere' } };
  expect(await said(visitor, await signCertificate(elsewhere, old.signs, signedBefore))).toContain(
    'https://elsewhere.example',
  );
  await visitor.goto(`/verify/${'0'.repeat(20)}`);
  await expect(visitor.getByRole('main')).toContainText(words.refusals['not-ours']);
});

test('a showing is good for one who asked, once', async ({ page, browser }) => {
  const id = await issue(page);
  const [holder, visitor] = [await pageOf(browser, learner), await pageOf(browser)];
  const own = messages.ownCertificates;
  const show = async (number: string) => {
    await holder.goto(`/learn/certificates/${id}`);
    await holder.getByLabel(own.audience, { exact: true }).fill('Cormorant Haulage');
    await holder.getByLabel(own.nonce, { exact: true }).fill(number);
    await holder.getByRole('button', { name: own.show }).click();
    await expect(holder.getByLabel(own.showing)).toBeVisible();
    return holder.getByLabel(own.showing).inputValue();
  };
  const asked = { [words.audience]: 'Cormorant Haulage', [words.nonce]: '7K4F-29QX' };
  const showing = await show('7K4F-29QX');
  expect(await said(visitor, showing, { ...asked, [words.audience]: 'Another yard' })).toContain('somebody else');
  expect(await said(visitor, showing, { ...asked, [words.nonce]: 'other' })).toContain(words.refusals['wrong-nonce']);
  expect(await said(visitor, showing, asked)).toContain(words.good);
  expect(await said(visitor, showing, asked)).toContain('was used before');
  await holder.getByRole('button', { name: own.show }).click();
  await expect(
    holder.getByRole('alert').filter({ hasText: messages.problems['certificate-shown-already'] }),
  ).toBeVisible();
});

test('nobody sees more of the holder than they agreed to, before or after', async ({ page, browser }) => {
  const id = await issue(page);
  const [holder, visitor] = [await pageOf(browser, learner), await pageOf(browser)];
  const everything = async () => {
    const copy = await copyOf(holder, id);
    const { issuer, credentialStatus } = payloadOf(copy);
    const addresses = [
      issuer.id,
      `${issuer.id}/keys`,
      credentialStatus.statusListCredential,
      credentialStatus.statusReference,
    ];
    const paths = [`/verify/${id}`, ...addresses.map((address) => new URL(address).pathname)];
    const answers = await Promise.all(paths.map(async (path) => (await visitor.request.get(path)).text()));
    const signed = copy
      .split('.')
      .slice(0, 2)
      .map((part) => Buffer.from(part, 'base64url').toString());
    return [...answers, ...signed, await said(visitor, copy)];
  };
  const secrets = [learner.signInName, 'Solid work', administrator.name, '"d"'];
  const told = [...secrets, learner.name, learner.id, 'ScaledScore', words.results];
  for (const answer of await everything()) for (const secret of told) expect(answer).not.toContain(secret);

  await holder.goto(`/learn/certificates/${id}`);
  await holder.getByLabel(messages.ownCertificates.consentName).check();
  await holder.getByLabel(messages.ownCertificates.consentResults).check();
  await holder.getByRole('button', { name: messages.ownCertificates.store }).click();
  await expect(holder.getByRole('status').filter({ hasText: messages.ownCertificates.stored })).toBeVisible();
  const [onRecord = '', ...others] = await everything();
  expect(onRecord).toContain(learner.name);
  expect(onRecord).toContain(words.results);
  expect(others.some((answer) => answer.includes('ScaledScore'))).toBe(true);
  for (const answer of others.slice(0, -1)) expect(answer).not.toContain(learner.name);
  for (const answer of [onRecord, ...others]) for (const secret of secrets) expect(answer).not.toContain(secret);
  const named = words.named.same.replace('{name}', learner.name);
  expect(await said(visitor, await copyOf(holder, id), { [words.name]: learner.name })).toContain(named);
  expect(await said(visitor, await copyOf(holder, id), { [words.name]: 'Lou Else' })).not.toContain(named);
});

test('once a key may be in other hands, what it signed since is refused, and the holder has a new copy', async ({
  page,
  browser,
}) => {
  const id = await issue(page);
  const [holder, visitor] = [await pageOf(browser, learner), await pageOf(browser)];
  const copy = await copyOf(holder, id);
  await page.goto('/certificates/keys');
  await page.getByText(messages.issuerKeys.compromise).click();
  await page.getByLabel(messages.issuerKeys.from).fill('2026-01-01T00:00');
  await page.getByRole('button', { name: messages.issuerKeys.mark }).click();
  await expect(page.getByText(messages.issuerKeys.compromised, { exact: true })).toBeVisible();
  expect(await said(visitor, copy)).toContain(words.refusals['key-compromised']);
  expect(await said(visitor, await copyOf(holder, id))).toContain(words.good);
  await visitor.goto(`/verify/${id}`);
  await expect(visitor.getByRole('main')).toContainText(words.good);
});

test('the paper is made out to its holder, tagged, and the same each time', async ({ page, browser }) => {
  const id = await issue(page);
  const holder = await pageOf(browser, learner);
  const paper = async () => (await holder.request.get(`/learn/certificates/${id}/pdf`)).body();
  const [bytes, again] = [await paper(), await paper()];
  expect(bytes.equals(again)).toBe(true);
  expect(bytes.toString('latin1')).toMatch(/\/StructTreeRoot[\s\S]*\/MarkInfo|\/MarkInfo[\s\S]*\/StructTreeRoot/);
  const read = await readPdf(bytes);
  expect(read).toMatchObject({ isTagged: true, language: 'en', title: `Certificate: ${scheme.text.en.name}` });
  expect(read.text).toContain(learner.name);
  expect(read.text).toContain(id);
});

test('who had a part in the training decides nothing, and nobody is certified who is not ready', async ({ page }) => {
  const weak = await somebodyNew('learner', administrator.organizationId);
  await addShown(weak, { score: 0 });
  await addGranted(weak);
  await page.goto('/certificates/keys');
  await page.getByRole('button', { name: messages.issuerKeys.make }).click();
  await expect(page.getByRole('status')).toContainText(messages.issuerKeys.made);
  await page.goto('/certificates');
  const line = page.getByRole('listitem').filter({ hasText: weak.name });
  await line.getByLabel(messages.certificates.comment).fill('A friend');
  await line.getByRole('button').click();
  await expect(line.getByRole('alert')).toContainText(messages.problems['certificate-not-ready']);
  const self = await somebodyNew('administrator,learner', administrator.organizationId);
  await addShown(self);
  await addGranted(self);
  await signInNew(page, self);
  await page.goto('/certificates');
  const own = page.getByRole('listitem').filter({ hasText: self.name });
  await expect(own).toContainText(messages.certificates.partial);
  await expect(own.getByRole('button')).toHaveCount(0);
});

test.describe('somebody else’s', () => {
  test.use({ forgiven: /404/ });

  test('certificate is as if it were not there', async ({ page, browser }) => {
    const id = await issue(page);
    const other = await pageOf(browser, await somebodyNew('learner', administrator.organizationId));
    for (const part of ['', '/signed', '/pdf'])
      await expectNotThere(other.request, id, (one) => `/learn/certificates/${one}${part}`);
    const strange = await pageOf(browser, await somebodyNew('administrator'));
    await expectNotThere(strange.request, id, (one) => `/certificates/${one}`);
  });
});

test('axe finds nothing serious on any page of certificates, and each fits a small screen', async ({
  page,
  browser,
}) => {
  test.slow();
  const id = await issue(page);
  const holder = await pageOf(browser, learner);
  const places: [Page, string][] = [
    [page, '/certificates'],
    [page, '/certificates/keys'],
    [page, `/certificates/${id}`],
    [holder, '/learn/certificates'],
    [holder, `/learn/certificates/${id}`],
    [holder, '/verify'],
    [holder, `/verify/${id}`],
  ];
  for (const [at, path] of places) {
    await at.goto(path);
    await expectClean(at, path);
    await at.setViewportSize({ width: 360, height: 740 });
    await expectNoOverflow(at);
  }
});
