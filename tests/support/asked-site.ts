import { once } from 'node:events';
import { createServer, type IncomingHttpHeaders, type OutgoingHttpHeaders, request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { text } from 'node:stream/consumers';
import pino from 'pino';
import { type Pages, siteListener } from '@/app/_server/http/site-listener';
import type { Site } from '@/app/_server/http/visitor';
import { logOptions } from '@/app/_server/log';

export interface Question {
  path?: string;
  method?: string;
  headers?: OutgoingHttpHeaders;
  /** Sent piece by piece, without saying how much it will be, unless `headers` does. */
  body?: readonly string[];
}

export interface Answer {
  status: number;
  headers: IncomingHttpHeaders;
  text: string;
}

/** What the pages were asked with. */
export interface Heard {
  method: string;
  path: string;
  headers: IncomingHttpHeaders;
  body: string;
}

export interface AskedSite {
  port: number;
  ask(question?: Question): Promise<Answer>;
  /** What came through to the pages, in order. */
  heard: Heard[];
  /** What was logged, in order. */
  logged: Record<string, unknown>[];
}

/** Runs the site's listener on a port of its own, before pages that repeat what they hear, for as long as `run` takes. */
export async function withSite(
  site: Partial<Site>,
  run: (asked: AskedSite) => Promise<void>,
  pages?: (port: number) => Pages,
): Promise<void> {
  const heard: Heard[] = [];
  const logged: Record<string, unknown>[] = [];
  const log = pino({ ...logOptions, level: 'debug' }, { write: (line: string) => logged.push(JSON.parse(line)) });
  const server = createServer();
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  const repeat: Pages = async (req, res) => {
    heard.push({ method: req.method ?? '', path: req.url ?? '', headers: { ...req.headers }, body: await text(req) });
    res.end('a page');
  };
  const whole = { origin: 'http://shop.example', proxy: false, dev: false, ...site };
  server.on('request', siteListener(whole, pages?.(port) ?? repeat, log));
  try {
    await run({ port, ask: (question = {}) => ask(port, question), heard, logged });
  } finally {
    server.closeAllConnections();
    server.close();
  }
}

async function ask(port: number, { path = '/', method = 'GET', headers = {}, body = [] }: Question): Promise<Answer> {
  const req = request({ port, host: '127.0.0.1', path, method, headers, agent: false });
  for (const piece of body) req.write(piece);
  req.end();
  const [res] = await once(req, 'response');
  // Refused before all of it is sent, one finds the line closed.
  req.on('error', () => {});
  return { status: res.statusCode, headers: res.headers, text: await text(res) };
}
