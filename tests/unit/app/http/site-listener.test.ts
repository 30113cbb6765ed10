import { request } from 'node:http';
import { createConnection } from 'node:net';
import { text } from 'node:stream/consumers';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { withSite } from '../../../support/asked-site';

const HTTPS = { origin: 'https://shop.example' };
const KILOBYTE = 1024;

test('every answer says what a browser may do with it, whatever the address', () =>
  withSite({}, async ({ ask }) => {
    for (const path of ['/', '/_next/static/chunks/a.js', '/no-such-page']) {
      const { headers } = await ask({ path });
      expect(headers).toMatchObject({
        'x-content-type-options': 'nosniff',
        'referrer-policy': 'same-origin',
        'permissions-policy': 'camera=(), microphone=(), geolocation=()',
        'cross-origin-opener-policy': 'same-origin',
      });
      expect(headers['content-security-policy']).toMatch(/^default-src 'self'; script-src 'self' 'nonce-[\w-]{22}';/);
      expect(headers['content-security-policy']).toMatch(/object-src 'none'.*frame-ancestors 'none'/);
      expect(headers['strict-transport-security']).toBeUndefined();
    }
  }));

test('a refusal says so too', () =>
  withSite({}, async ({ ask }) => {
    const { status, headers } = await ask({ method: 'PUT' });
    expect(status).toBe(405);
    expect(headers).toMatchObject({ allow: 'GET, HEAD, OPTIONS, POST', 'x-content-type-options': 'nosniff' });
    expect(headers['content-security-policy']).toContain("script-src 'self' 'nonce-");
  }));

test('code is evaluated only while one develops, and only https is kept to', async () => {
  await withSite({ dev: true }, async ({ ask }) => {
    expect((await ask()).headers['content-security-policy']).toMatch(/script-src [^;]* 'unsafe-eval'/);
  });
  await withSite(HTTPS, async ({ ask }) => {
    const { headers } = await ask();
    expect(headers['content-security-policy']).not.toContain('unsafe-eval');
    expect(headers['strict-transport-security']).toBe('max-age=31536000');
  });
});

test('the pages are told the policy that the browser is told, and each answer has its own nonce', () =>
  withSite({}, async ({ ask, heard }) => {
    const answers = [await ask(), await ask()];
    const policies = answers.map(({ headers }) => headers['content-security-policy']);
    expect(heard.map(({ headers }) => headers['content-security-policy'])).toEqual(policies);
    expect(policies[0]).not.toBe(policies[1]);
  }));

test('nothing that a client says of itself reaches the pages', () =>
  withSite({}, async ({ ask, heard }) => {
    const said = {
      Host: 'shop.example',
      'X-Request-Id': 'mine',
      'X-Faultwright-Address': '203.0.113.9',
      'X-Forwarded-For': '203.0.113.9',
      'X-Forwarded-Host': 'elsewhere.example',
      'X-Forwarded-Proto': 'https',
      'X-Forwarded-Port': '9',
      Forwarded: 'for=203.0.113.9',
      'X-Real-IP': '203.0.113.9',
      'X-Middleware-Subrequest': 'x',
      'Content-Security-Policy': "script-src 'nonce-mine'",
      'Accept-Language': 'en',
    };
    const { headers } = await ask({ headers: said });
    expect(headers['x-request-id']).toMatch(/^[\w-]{16}$/);
    const { 'content-security-policy': policy, connection: _, ...told } = heard[0]?.headers ?? {};
    expect(policy).not.toContain('nonce-mine');
    expect(told).toEqual({
      host: 'shop.example',
      'accept-language': 'en',
      'x-request-id': headers['x-request-id'],
      'x-faultwright-address': '127.0.0.1',
      'x-forwarded-for': '127.0.0.1',
      'x-forwarded-host': 'shop.example',
      'x-forwarded-proto': 'http',
    });
  }));

test('a proxy is believed where the settings say so, and only its own hop', () =>
  withSite({ proxy: true }, async ({ ask, heard }) => {
    const headers = {
      'X-Forwarded-For': '203.0.113.9, 198.51.100.7',
      'X-Forwarded-Host': 'shop.example',
      'X-Forwarded-Proto': 'https',
      'X-Faultwright-Address': '203.0.113.9',
    };
    await ask({ headers });
    expect(heard[0]?.headers).toMatchObject({
      'x-faultwright-address': '198.51.100.7',
      'x-forwarded-for': '198.51.100.7',
      'x-forwarded-host': 'shop.example',
      'x-forwarded-proto': 'https',
    });
  }));

test('where a proxy names no address, its own is taken', () =>
  withSite({ proxy: true }, async ({ ask, heard }) => {
    for (const said of [undefined, '203.0.113.9, unknown', '']) {
      await ask({ headers: said === undefined ? {} : { 'X-Forwarded-For': said } });
    }
    expect(heard.map(({ headers }) => headers['x-faultwright-address'])).toEqual(Array(3).fill('127.0.0.1'));
  }));

test.each([
  ['the public address', { Origin: 'http://shop.example', Host: '127.0.0.1:3000' }],
  ['the name it was asked by', { Origin: 'http://127.0.0.1:3000', Host: '127.0.0.1:3000' }],
  ['the browser’s word that it is its own page', { 'Sec-Fetch-Site': 'same-origin', Host: 'shop.example' }],
])('a form is taken on %s', (_, headers) =>
  withSite({}, async ({ ask, heard }) => {
    const { status } = await ask({ method: 'POST', headers, body: ['a=1'] });
    expect(status).toBe(200);
    expect(heard).toMatchObject([{ method: 'POST', body: 'a=1' }]);
  }),
);

test.each([
  ['another site', { Origin: 'http://elsewhere.example' }],
  ['the same name by another scheme', { Origin: 'https://shop.example' }],
  ['the same name on another port', { Origin: 'http://shop.example:8080' }],
  ['a name that begins like it', { Origin: 'http://shop.example.elsewhere.example' }],
  ['nowhere that the browser tells', { Origin: 'null' }],
  ['a neighbour', { 'Sec-Fetch-Site': 'same-site' }],
  ['who knows where', {}],
  [
    'another site that calls itself a proxy',
    { Origin: 'http://elsewhere.example', 'X-Forwarded-Host': 'elsewhere.example' },
  ],
])('a form from %s is refused', (_, headers) =>
  withSite({}, async ({ ask, heard }) => {
    const { status, text: words } = await ask({
      method: 'POST',
      headers: { Host: 'shop.example', ...headers },
      body: ['a=1'],
    });
    expect([status, words]).toEqual([403, 'Only pages of this site may send this.']);
    expect(heard).toEqual([]);
  }),
);

test('reading asks for no origin', () =>
  withSite({}, async ({ ask }) => {
    for (const method of ['GET', 'HEAD', 'OPTIONS'])
      expect((await ask({ method, headers: { Origin: 'http://elsewhere.example' } })).status).toBe(200);
  }));

test('the pages compare a form’s origin with the host that it was taken for', () =>
  withSite(HTTPS, async ({ ask, heard }) => {
    const headers = { Origin: 'https://shop.example', Host: '127.0.0.1:3000' };
    await ask({ method: 'POST', headers, body: ['a=1'] });
    expect(heard[0]?.headers['x-forwarded-host']).toBe('shop.example');
    await ask({ headers: { Host: '127.0.0.1:3000' } });
    expect(heard[1]?.headers['x-forwarded-host']).toBe('127.0.0.1:3000');
  }));

test.each([
  ['/learn', 64 * KILOBYTE],
  ['/people/import', 1024 * KILOBYTE],
  ['/people/import?again', 1024 * KILOBYTE],
  ['/people/import/more', 64 * KILOBYTE],
  ['/questions/pictures', 5 * 1024 * KILOBYTE],
  ['/questions/pictures/more', 64 * KILOBYTE],
  ['/questions/exchange/preview', 24 * 1024 * KILOBYTE],
  ['/questions/exchange/import?topic=filtration', 24 * 1024 * KILOBYTE],
  ['/questions/exchange', 64 * KILOBYTE],
  ['/questions/new', 256 * KILOBYTE],
  ['/questions/0123456789abcdef0123', 256 * KILOBYTE],
  ['/questions', 64 * KILOBYTE],
])('%s takes %i bytes and not one more, whether it was told before or not', (path, limit) =>
  withSite({}, async ({ ask, heard }) => {
    const own = { Origin: 'http://shop.example' };
    const most = ['x'.repeat(limit - 1), 'x'];
    for (const told of [{}, { 'Content-Length': limit }])
      expect((await ask({ path, method: 'POST', headers: { ...own, ...told }, body: most })).status).toBe(200);
    for (const told of [{}, { 'Content-Length': limit + 1 }])
      expect((await ask({ path, method: 'POST', headers: { ...own, ...told }, body: [...most, 'x'] })).status).toBe(
        413,
      );
    expect(heard.map(({ body }) => body.length)).toEqual([limit, limit]);
  }),
);

test('reading with a body that is too large is refused as well', () =>
  withSite({}, async ({ ask }) => {
    const body = ['x'.repeat(65 * KILOBYTE)];
    expect((await ask({ headers: { 'Transfer-Encoding': 'chunked' }, body })).status).toBe(413);
  }));

test('a form that breaks off never reaches the pages, and the server goes on', () =>
  withSite({}, async ({ ask, port, heard, logged }) => {
    const headers = { Origin: 'http://shop.example', 'Content-Length': 10 };
    const broken = request({ port, host: '127.0.0.1', method: 'POST', path: '/learn', headers });
    broken.on('error', () => {});
    broken.write('half');
    await wait(100);
    broken.destroy();
    expect((await ask()).status).toBe(200);
    await until(() => logged.length === 2);
    expect(heard.map(({ method }) => method)).toEqual(['GET']);
    expect(logged).toContainEqual(
      expect.objectContaining({ method: 'POST', path: '/learn', brokeOff: true, level: 'info' }),
    );
  }));

test('an address of somewhere else is no address of this site', () =>
  withSite({}, async ({ port, heard }) => {
    const socket = createConnection({ port, host: '127.0.0.1' });
    socket.write('GET http://elsewhere.example/ HTTP/1.1\r\nHost: elsewhere.example\r\nConnection: close\r\n\r\n');
    expect(await text(socket)).toMatch(/^HTTP\/1\.1 400 /);
    expect(heard).toEqual([]);
  }));

test('a request gets one line in the log, without what it carried', () =>
  withSite({}, async ({ ask, logged }) => {
    const headers = { Origin: 'http://shop.example', Cookie: 'session=HUSH', Authorization: 'Bearer HUSH' };
    const answer = await ask({ path: '/join/HUSH?next=HUSH', method: 'POST', headers, body: ['pin=HUSH'] });
    await ask({ path: '/_next/static/a.js' });
    await until(() => logged.length === 2);
    expect(logged).toEqual([
      {
        level: 'info',
        time: expect.stringMatching(/^\d{4}-/),
        id: answer.headers['x-request-id'],
        method: 'POST',
        path: '/join/…',
        status: 200,
        ms: expect.any(Number),
      },
      expect.objectContaining({ level: 'debug', path: '/_next/static/a.js' }),
    ]);
  }));

test('an error that escapes is logged with the request’s id and answered without a word on it', () =>
  withSite(
    {},
    async ({ ask, logged }) => {
      const { status, text: words, headers } = await ask({ path: '/learn' });
      expect([status, words]).toEqual([500, 'Something went wrong on the server.']);
      await until(() => logged.length === 2);
      const id = headers['x-request-id'];
      expect(logged).toMatchObject([
        { level: 'error', id, err: { type: 'RangeError', message: 'hush' } },
        { level: 'error', id, path: '/learn', status: 500 },
      ]);
    },
    () => async () => {
      throw new RangeError('hush');
    },
  ));

test('a page that the pages ask this server for has the visitor they were asked by', async () => {
  const seen: unknown[] = [];
  await withSite(
    { proxy: true },
    async ({ ask }) => {
      const headers = {
        Origin: 'http://shop.example',
        'X-Forwarded-For': '198.51.100.7',
        'X-Forwarded-Host': 'shop.example',
      };
      const { headers: answered } = await ask({ path: '/act', method: 'POST', headers, body: ['a=1'] });
      expect(seen).toEqual([
        ['/act', answered['x-request-id'], '198.51.100.7'],
        ['/page', answered['x-request-id'], '198.51.100.7'],
      ]);
      // Once it is answered, its id opens nothing.
      await ask({ path: '/later', headers: { 'X-Request-Id': String(answered['x-request-id']) } });
      expect(seen[2]).toEqual(['/later', expect.not.stringMatching(String(answered['x-request-id'])), '127.0.0.1']);
    },
    (port) => async (req, res) => {
      const { 'x-request-id': id, 'x-faultwright-address': address } = req.headers;
      seen.push([req.url, id, address]);
      if (req.url === '/act')
        await fetch(`http://127.0.0.1:${port}/page`, {
          headers: { 'X-Request-Id': String(id), 'X-Forwarded-For': '203.0.113.9' },
        });
      res.end();
    },
  );
});

test('the pages ask this server on a new connection each time, for none runs out while an act has the thread', async () => {
  const ports: (number | undefined)[] = [];
  await withSite(
    {},
    async ({ ask }) => {
      const headers = { Origin: 'http://shop.example' };
      for (let acts = 0; acts < 3; acts++) await ask({ path: '/act', method: 'POST', headers, body: ['a=1'] });
      expect(ports).toHaveLength(3);
      expect(new Set(ports).size).toBe(3);
    },
    (port) => async (req, res) => {
      if (req.url === '/page') ports.push(req.socket.remotePort);
      else {
        const page = await fetch(`http://127.0.0.1:${port}/page`, {
          headers: { 'X-Request-Id': String(req.headers['x-request-id']) },
        });
        await page.text();
      }
      res.end();
    },
  );
});

/** The line of a request is written when its connection is done with it, a moment after the answer is read. */
async function until(holds: () => boolean): Promise<void> {
  for (let tries = 0; tries < 100 && !holds(); tries++) await wait(20);
}
