import { IncomingMessage } from 'node:http';

const KILOBYTE = 1024;
const USUAL_LIMIT = 64 * KILOBYTE;

/** Largest picture that is taken. */
export const MOST_PICTURE_BYTES = 5 * 1024 * KILOBYTE;

/** Largest package of questions that is taken. */
export const MOST_PACKAGE_BYTES = 24 * 1024 * KILOBYTE;

/** Addresses that take more. Where it is an action that does, `serverActions.bodySizeLimit` in next.config.js has to allow it. */
const LARGER_LIMITS: readonly [address: RegExp, limit: number][] = [
  [/^\/people\/import$/, 1024 * KILOBYTE],
  [/^\/questions\/pictures$/, MOST_PICTURE_BYTES],
  [/^\/questions\/exchange\/(preview|import)$/, MOST_PACKAGE_BYTES],
  // A question with every one of its texts as long as it may be, in any script.
  [/^\/questions\/(new|[0-9a-f]{20})$/, 256 * KILOBYTE],
];

/** Bytes that an address takes. */
export function bodyLimit(path: string): number {
  return LARGER_LIMITS.find(([address]) => address.test(path))?.[1] ?? USUAL_LIMIT;
}

/**
 * The request with its whole body in hand, so that nothing behind ever meets one that is too large or breaks off.
 * What is over the limit is thrown away as it comes.
 *
 * @returns null when it is larger than the limit.
 */
export async function withWholeBody(req: IncomingMessage, limit: number): Promise<IncomingMessage | null> {
  if (req.headers['transfer-encoding'] === undefined && Number(req.headers['content-length'] ?? 0) === 0) return req;
  if (Number(req.headers['content-length'] ?? 0) > limit) return null;
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of req.iterator({ destroyOnReturn: false })) {
    bytes += chunk.length;
    if (bytes > limit) return null;
    chunks.push(chunk);
  }
  return replayed(req, Buffer.concat(chunks));
}

function replayed(req: IncomingMessage, body: Buffer): IncomingMessage {
  const { method, url, headers, rawHeaders, httpVersion, httpVersionMajor, httpVersionMinor } = req;
  const copy = new IncomingMessage(req.socket);
  Object.assign(copy, { method, url, headers, rawHeaders, httpVersion, httpVersionMajor, httpVersionMinor });
  copy.push(body);
  copy.push(null);
  copy.complete = true;
  return copy;
}
