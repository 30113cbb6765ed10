import type { IncomingHttpHeaders } from 'node:http';
import { ADDRESS_HEADER } from './address-header';
import type { Visitor } from './visitor';

/** Headers that only this server may set, or that others would take for its word. */
const NOT_FROM_OUTSIDE =
  /^(x-request-id|x-faultwright-.*|x-forwarded-.*|forwarded|x-real-ip|x-middleware-.*|content-security-policy(-report-only)?)$/;

/** Takes out what a client must not say, and puts in what the pages go by. */
export function setRequestHeaders(headers: IncomingHttpHeaders, visitor: Visitor, policy: string): void {
  for (const name of Object.keys(headers)) if (NOT_FROM_OUTSIDE.test(name)) delete headers[name];
  Object.assign(headers, {
    'x-request-id': visitor.requestId,
    [ADDRESS_HEADER]: visitor.address,
    'x-forwarded-for': visitor.address,
    'x-forwarded-host': visitor.host,
    'x-forwarded-proto': visitor.scheme,
    // From here the framework takes the nonce that it puts on its scripts.
    'content-security-policy': policy,
  });
}
