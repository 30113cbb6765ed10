import { randomBytes } from 'node:crypto';
import type { IncomingHttpHeaders, IncomingMessage } from 'node:http';
import { isIP } from 'node:net';

/** What the server has to know of the site that it serves. */
export interface Site {
  /** Where people reach it. */
  origin: string;
  /** A proxy in front is believed about who asks. */
  proxy: boolean;
  /** Serves from source, and reloads. */
  dev: boolean;
}

/** Who asks, and by which name of the site. Decided here once; nothing that a client says of itself counts. */
export interface Visitor {
  /** Names this request in the log and to whoever reports trouble. */
  requestId: string;
  /** Where guesses are counted against. */
  address: string;
  host: string;
  scheme: 'http' | 'https';
}

export function visitorOf({ headers, socket }: IncomingMessage, { origin, proxy }: Site): Visitor {
  const own = new URL(origin);
  const forwarded = proxy ? forwardedOf(headers) : {};
  return {
    requestId: randomBytes(12).toString('base64url'),
    address: plainAddress(forwarded.address ?? socket.remoteAddress ?? ''),
    host: forwarded.host ?? headers.host ?? own.host,
    scheme: forwarded.scheme ?? (own.protocol === 'https:' ? 'https' : 'http'),
  };
}

/** What the nearest proxy says. Hops before the last were written by whoever asked it. */
function forwardedOf(headers: IncomingHttpHeaders): Partial<Omit<Visitor, 'requestId'>> {
  const address = lastOf(headers['x-forwarded-for']);
  const host = lastOf(headers['x-forwarded-host']);
  const scheme = lastOf(headers['x-forwarded-proto']);
  return {
    ...(address && isIP(address) > 0 && { address }),
    ...(host && { host }),
    ...((scheme === 'http' || scheme === 'https') && { scheme }),
  };
}

function lastOf(header: string | string[] | undefined): string | undefined {
  return (
    String(header ?? '')
      .split(',')
      .at(-1)
      ?.trim() || undefined
  );
}

/** An IPv4 address as such, also where the socket speaks IPv6. */
function plainAddress(address: string): string {
  return address.replace(/^::ffff:(?=\d+\.)/i, '');
}
