import { CompactSign, compactVerify, errors } from 'jose';
import { z } from 'zod';
import { bytesIn } from './base64url';
import type { PrivateJwk, PublicJwk } from './issuer-key';

/** The one algorithm: Ed25519, under the name that RFC 8037 gives it. */
export const ALGORITHM = 'EdDSA';

/** More than any document of ours has; what is longer is not looked at. */
export const MOST_CHARACTERS = 100_000;

/** Kinds of documents by what their header says: an Open Badge, another credential, a presentation. */
export const types = ['JWT', 'vc+jwt', 'vp+jwt'] as const;
export type DocumentType = (typeof types)[number];

/** No header but these: one that carries its own key, or asks to be read otherwise, is not ours. */
const headerSchema = z.strictObject({ alg: z.literal(ALGORITHM), kid: z.string().min(1), typ: z.enum(types) });

/** A signed document as it was handed over, its signature not yet checked. */
export interface ReadJws {
  compact: string;
  keyId: string;
  type: DocumentType;
  payload: Readonly<Record<string, unknown>>;
}

/** Signs a payload. */
export function signed(
  payload: Readonly<Record<string, unknown>>,
  type: DocumentType,
  key: { id: string; jwk: PrivateJwk },
): Promise<string> {
  return new CompactSign(new TextEncoder().encode(JSON.stringify(payload)))
    .setProtectedHeader({ alg: ALGORITHM, kid: key.id, typ: type })
    .sign({ ...key.jwk, alg: ALGORITHM });
}

/**
 * Takes a compact JWS apart; undefined where it is none, or one that we do not write.
 *
 * Each part has to be written in the one way there is, so that no sign can change without the signature noticing: of the
 * last sign of a signature, four bits would count for nothing.
 *
 * @source RFC 7515, section 7.1.
 */
export function readJws(compact: string): ReadJws | undefined {
  if (compact.length > MOST_CHARACTERS) return undefined;
  const parts = compact.split('.').map(bytesIn);
  const [header, payload, signature] = parts;
  if (parts.length !== 3 || !header || !payload || !signature) return undefined;
  const head = headerSchema.safeParse(jsonIn(header));
  const body = z.record(z.string(), z.unknown()).safeParse(jsonIn(payload));
  if (!head.success || !body.success) return undefined;
  return { compact, keyId: head.data.kid, type: head.data.typ, payload: body.data };
}

/** Whether a key made the signature of a compact JWS. */
export async function signatureFits(compact: string, { kty, crv, x }: PublicJwk): Promise<boolean> {
  try {
    await compactVerify(compact, { kty, crv, x, alg: ALGORITHM }, { algorithms: [ALGORITHM] });
    return true;
  } catch (thrown) {
    if (thrown instanceof errors.JOSEError) return false;
    throw thrown;
  }
}

function jsonIn(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch (thrown) {
    if (thrown instanceof SyntaxError || thrown instanceof TypeError) return undefined;
    throw thrown;
  }
}
