import { randomBytes } from 'node:crypto';
import type { ServerResponse } from 'node:http';
import type { Site } from './visitor';

const YEAR_IN_SECONDS = 31_536_000;

/** Everything comes from this server, and no script runs but its own files and what carries this answer's nonce. */
export function contentPolicy(dev: boolean): string {
  const nonce = randomBytes(16).toString('base64url');
  return [
    "default-src 'self'",
    // Reloading while one develops evaluates code.
    `script-src 'self' 'nonce-${nonce}'${dev ? " 'unsafe-eval'" : ''}`,
    // Drawings carry style attributes, which no nonce can be put on.
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data:",
    "connect-src 'self'",
    "object-src 'none'",
    "base-uri 'self'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ');
}

/** On every answer, also those that are files or refusals. */
export function setResponseHeaders(res: ServerResponse, site: Site, requestId: string, policy: string): void {
  res.setHeader('X-Request-Id', requestId);
  res.setHeader('Content-Security-Policy', policy);
  res.setHeader('X-Content-Type-Options', 'nosniff');
  res.setHeader('Referrer-Policy', 'same-origin');
  res.setHeader('Permissions-Policy', 'camera=(), microphone=(), geolocation=()');
  res.setHeader('Cross-Origin-Opener-Policy', 'same-origin');
  if (site.origin.startsWith('https:')) res.setHeader('Strict-Transport-Security', `max-age=${YEAR_IN_SECONDS}`);
}
