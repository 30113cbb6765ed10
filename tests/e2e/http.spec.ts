import { once } from 'node:events';
import type { APIResponse, Locator } from '@playwright/test';
import { sql } from 'drizzle-orm';
import { codeOf } from '../support/case-codes';
import { freshData, openPlace, placeFor, SHARED_PORT, startServer, untilUp } from '../support/server';
import { expect, test } from './fixtures';
import { openAttempt } from './learner';

const origin = `http://127.0.0.1:${SHARED_PORT}`;
const code = codeOf('lift-pump-weak', 800);

function nonceOf(answer: APIResponse): string {
  const [, nonce] =
    /script-src 'self' 'nonce-([\w-]{22})';/.exec(answer.headers()['content-security-policy'] ?? '') ?? [];
  return nonce ?? '';
}

test('every answer carries the headers that keep a browser to this site', async ({ request }) => {
  const page = await (await request.get('/')).text();
  const [, script = ''] = /<script src="([^"]+)"/.exec(page) ?? [];
  for (const path of ['/', script, '/icon.svg', '/api/health', '/no-such-page', '/_next/static/none.js']) {
    const headers = (await request.get(path)).headers();
    expect(headers, path).toMatchObject({
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'same-origin',
      'permissions-policy': 'camera=(), microphone=(), geolocation=()',
      'cross-origin-opener-policy': 'same-origin',
    });
    expect(headers['content-security-policy'], path).toMatch(
      /^default-src 'self'; script-src 'self' 'nonce-[\w-]{22}';/,
    );
    expect(headers['content-security-policy'], path).not.toMatch(/script-src[^;]*(unsafe|\*|strict-dynamic)/);
    expect(headers, path).not.toHaveProperty('x-powered-by');
  }
});

test('every script of a page carries the nonce of its answer, and no two answers have the same', async ({ page }) => {
  const id = await openAttempt(page, code);
  const nonces = [];
  for (const path of ['/', '/learn', `/learn/cases/${id}`, '/no-such-page', '/']) {
    const answer = await page.request.get(path);
    const scripts = (await answer.text()).match(/<script\b[^>]*>/g) ?? [];
    expect(scripts.length, path).toBeGreaterThan(4);
    for (const tag of scripts) expect(tag, path).toContain(`nonce="${nonceOf(answer)}"`);
    nonces.push(nonceOf(answer));
  }
  expect(new Set(nonces).size).toBe(5);
});

test.describe('with an address that there is not', () => {
  test.use({ forgiven: /Failed to load resource.*\/no-such-page/ });

  test('pages come to life under the policy, at first load and from one to the next', async ({ page }) => {
    await page.goto('/');
    await expectAlive(page.getByLabel('Units'));
    await page.goto('/no-such-page');
    await expectAlive(page.getByLabel('Units'));
    const id = await openAttempt(page, code);
    await expectAlive(page.getByLabel('Units'));
    await page.goto('/learn');
    await page.locator(`a[href="/learn/cases/${id}"]`).first().click();
    await expect(page.getByRole('region', { name: 'Hook up' })).toBeVisible();
  });

  async function expectAlive(choice: Locator): Promise<void> {
    await expect(choice).toBeVisible();
    await expect
      .poll(() => choice.evaluate((element) => Object.keys(element).some((key) => key.startsWith('__react'))))
      .toBe(true);
  }
});

test.describe('with scripts that somebody slipped in', () => {
  test.use({ forgiven: /Content Security Policy/ });

  test('none of them runs', async ({ page }) => {
    const slipped =
      '<script>window.ran = "bare"</script>' +
      '<script nonce="guessed">window.ran = "nonce"</script>' +
      '<script src="http://elsewhere.example/x.js"></script>' +
      '<img src="data:," onerror="window.ran = \'handler\'">' +
      '<a id="slipped" href="javascript:window.ran = \'link\'">x</a>';
    await page.route('http://elsewhere.example/x.js', (route) => route.fulfill({ body: 'window.ran = "foreign"' }));
    await page.route('/', async (route) => {
      const answer = await route.fetch();
      await route.fulfill({ response: answer, body: (await answer.text()).replace('<body>', `<body>${slipped}`) });
    });
    await page.goto('/');
    await page.locator('#slipped').click();
    await page.waitForLoadState('networkidle');
    expect(await page.evaluate(() => 'ran' in window && window.ran)).toBe(false);
  });
});

test.describe('with a form on somebody else’s page', () => {
  test.use({ forgiven: /Failed to load resource/ });

  test('it is refused', async ({ page }) => {
    await page.route('http://elsewhere.example/', (route) =>
      route.fulfill({
        contentType: 'text/html',
        body: `<form method="post" action="${origin}/learn"><button name="key" value="1">Send</button></form>`,
      }),
    );
    await page.goto('http://elsewhere.example/');
    const answer = page.waitForResponse(`${origin}/learn`);
    await page.getByRole('button', { name: 'Send' }).click();
    expect((await answer).status()).toBe(403);
    await expect(page.getByText('Only pages of this site may send this.')).toBeVisible();
  });
});

test('what says not where it is from is refused, and what is of this site is not', async ({ request }) => {
  expect((await request.post('/learn', { data: 'a=1' })).status()).toBe(403);
  expect((await request.post('/api/health', { data: 'a=1', headers: { Origin: origin } })).status()).toBe(405);
  expect((await request.delete('/learn', { headers: { Origin: origin } })).status()).toBe(405);
});

test('a body that is too large is refused', async ({ request }) => {
  const answer = await request.post('/learn', { data: 'x'.repeat(65_537), headers: { Origin: origin } });
  expect([answer.status(), await answer.text()]).toEqual([413, 'More than this address takes.']);
});

test('a request is named by the server, never by who asks', async ({ request }) => {
  const headers = { 'X-Request-Id': 'mine' };
  const ids = [await request.get('/', { headers }), await request.get('/', { headers })].map(
    (answer) => answer.headers()['x-request-id'],
  );
  for (const id of ids) expect(id).toMatch(/^[\w-]{16}$/);
  expect(ids[0]).not.toBe(ids[1]);
});

test('whoever watches over the server is told that it is well, and nothing else', async ({ request }) => {
  const answer = await request.get('/api/health');
  expect([answer.status(), await answer.text()]).toEqual([200, '{"status":"ok"}']);
  expect(answer.headers()['cache-control']).toBe('no-store');
});

test('a server whose database a newer version has changed is not well, stops in order and does not start again', async () => {
  const place = placeFor(3134);
  await freshData(place);
  const server = startServer(place);
  try {
    await untilUp(place);
    openPlace(place).run(sql`INSERT INTO __drizzle_migrations (hash, created_at) VALUES ('later', 4000000000000)`);
    const answer = await fetch(`http://127.0.0.1:${place.port}/api/health`);
    expect([answer.status, await answer.text()]).toEqual([503, '{"status":"unavailable"}']);
    server.kill('SIGTERM');
    expect(await once(server, 'exit')).toEqual([0, null]);
    expect(await once(startServer(place), 'exit')).toEqual([1, null]);
  } finally {
    server.kill('SIGKILL');
  }
});
