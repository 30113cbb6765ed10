import type { IncomingMessage, ServerResponse } from 'node:http';
import type { Log } from '../log';
import { bodyLimit, withWholeBody } from './body';
import { asRequest } from './console-log';
import { refusalOf, refuse, tooLarge } from './refusal';
import { setRequestHeaders } from './request-headers';
import { logWhenDone } from './request-log';
import { contentPolicy, setResponseHeaders } from './response-headers';
import { type Site, type Visitor, visitorOf } from './visitor';

/** What makes the pages. */
export type Pages = (req: IncomingMessage, res: ServerResponse) => Promise<void>;

/** What every request passes on its way to the pages. */
export function siteListener(site: Site, pages: Pages, log: Log) {
  const underway = new Map<string, Visitor>();

  return async function answer(req: IncomingMessage, res: ServerResponse): Promise<void> {
    const within = askedFromWithin(underway, req);
    const visitor = within ?? visitorOf(req, site);
    const { requestId } = visitor;
    const policy = contentPolicy(site.dev);
    logWhenDone(log, req, res, requestId);
    setResponseHeaders(res, site, requestId, policy);
    // Kept open, it may run out while an act has the thread, and the next act that ends in another page gets no page.
    if (within) res.setHeader('Connection', 'close');
    const refusal = refusalOf(req, visitor, site);
    if (refusal) return refuse(res, refusal);
    if (!within) {
      underway.set(requestId, visitor);
      res.on('close', () => underway.delete(requestId));
    }
    try {
      const whole = await withWholeBody(req, bodyLimit((req.url ?? '').split('?', 1)[0] ?? ''));
      if (!whole) return refuse(res, tooLarge);
      setRequestHeaders(whole.headers, { ...visitor, host: acceptedHost(req, visitor) }, policy);
      await asRequest(requestId, () => pages(whole, res));
    } catch (err) {
      breakOff(req, res, () => log.error({ id: requestId, err }, 'An error escaped'));
    }
  };
}

/**
 * Where an act ends in another page, the framework asks this server for that page with the headers it was itself asked
 * with. Such a request has the same visitor. Nobody else can know the id, but for the visitor who gains nothing by it.
 */
function askedFromWithin(underway: ReadonlyMap<string, Visitor>, { method, headers }: IncomingMessage) {
  return method === 'GET' ? underway.get(String(headers['x-request-id'])) : undefined;
}

/** The framework compares the origin of a form with the host again: it gets the one that was found right. */
function acceptedHost({ method, headers }: IncomingMessage, { host }: Visitor): string {
  return method === 'POST' && headers.origin && URL.canParse(headers.origin) ? new URL(headers.origin).host : host;
}

function breakOff(req: IncomingMessage, res: ServerResponse, report: () => void): void {
  // Whoever breaks off in the middle of a form is in the request's own line.
  if (req.errored) return;
  report();
  if (res.headersSent) res.destroy();
  else res.writeHead(500, { 'Content-Type': 'text/plain; charset=utf-8' }).end('Something went wrong on the server.');
}
