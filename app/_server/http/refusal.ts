import type { IncomingMessage, ServerResponse } from 'node:http';
import type { Site, Visitor } from './visitor';

/** Why a request goes no further. */
export interface Refusal {
  status: 400 | 403 | 405 | 413;
  text: string;
}

const READING = ['GET', 'HEAD', 'OPTIONS'];
const ALLOWED = [...READING, 'POST'];

export const tooLarge: Refusal = { status: 413, text: 'More than this address takes.' };

/** Undefined when the request may go on. */
export function refusalOf(
  { method = '', url = '', headers }: IncomingMessage,
  visitor: Visitor,
  site: Site,
): Refusal | undefined {
  if (!url.startsWith('/')) return { status: 400, text: 'Not an address of this site.' };
  if (!ALLOWED.includes(method)) return { status: 405, text: 'Not a method that this site knows.' };
  if (READING.includes(method) || headers['sec-fetch-site'] === 'same-origin') return undefined;
  const own = [site.origin, `${visitor.scheme}://${visitor.host}`];
  if (headers.origin && own.includes(headers.origin)) return undefined;
  return { status: 403, text: 'Only pages of this site may send this.' };
}

export function refuse(res: ServerResponse, { status, text }: Refusal): void {
  res.writeHead(status, {
    'Content-Type': 'text/plain; charset=utf-8',
    'Cache-Control': 'no-store',
    ...(status === 405 && { Allow: ALLOWED.join(', ') }),
  });
  res.end(text);
}
