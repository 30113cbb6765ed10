import { z } from 'zod';
import { signatureRefusal } from './check-signature';
import type { PrivateJwk } from './issuer-key';
import { readJws, signed } from './jws';
import { inSeconds } from './moments';
import type { PresentationRefusal } from './refusal';
import { type Verification, type VerificationTerms, verifyCertificate } from './verify-certificate';

/** Somebody's request to be shown a certificate, once. Times are milliseconds since 1970, UTC. */
export interface PresentationRequest {
  /** Who asks. */
  audience: string;
  /** Drawn for this request and no other. */
  nonce: string;
  expiresAt: number;
  /** When it was answered; null as long as it was not. */
  usedAt: number | null;
}

/** How long a presentation is good for after it was made: ten minutes. */
export const PRESENTATION_LASTS = 600_000;

const ENVELOPE = 'data:application/vc+jwt,';

/**
 * A presentation of a signed certificate, for one request. The issuer makes it when the holder asks for it, since holders have
 * no keys of their own.
 *
 * @source W3C Verifiable Credentials Data Model 2.0, section 4.13.2 on enveloped credentials; W3C Securing Verifiable
 *   Credentials using JOSE and COSE, on `vp+jwt`.
 */
export function signPresentation(
  { id, issuer, holder, certificate }: { id: string; issuer: string; holder: string; certificate: string },
  { audience, nonce }: Pick<PresentationRequest, 'audience' | 'nonce'>,
  key: { id: string; jwk: PrivateJwk },
  madeAt: number,
): Promise<string> {
  const presentation = {
    '@context': ['https://www.w3.org/ns/credentials/v2'],
    id,
    type: ['VerifiablePresentation'],
    holder,
    verifiableCredential: [
      {
        '@context': 'https://www.w3.org/ns/credentials/v2',
        id: `${ENVELOPE}${certificate}`,
        type: 'EnvelopedVerifiableCredential',
      },
    ],
  };
  const [iat, exp] = [inSeconds(madeAt), inSeconds(madeAt + PRESENTATION_LASTS)];
  return signed({ ...presentation, iss: issuer, sub: holder, jti: id, aud: audience, nonce, iat, exp }, 'vp+jwt', key);
}

const presentationSchema = z.object({
  type: z.array(z.string()).refine((types) => types.includes('VerifiablePresentation')),
  verifiableCredential: z.tuple([
    z.object({ type: z.literal('EnvelopedVerifiableCredential'), id: z.string().startsWith(ENVELOPE) }),
  ]),
  sub: z.string(),
  aud: z.string(),
  nonce: z.string(),
  exp: z.int(),
});

type Presentation = z.infer<typeof presentationSchema>;

/**
 * Checks a presentation against the request that it should answer, then the certificate in it.
 *
 * Where it is fine, the request has to be marked as answered by a statement that fails when it already is: of two who show the
 * same at once, one is refused there.
 */
export async function verifyPresentation(
  compact: string,
  request: PresentationRequest,
  terms: VerificationTerms,
): Promise<Verification<PresentationRefusal>> {
  const jws = readJws(compact.trim());
  if (jws?.type !== 'vp+jwt') return { ok: false, refusal: { code: 'unreadable' } };
  const forged = await signatureRefusal(jws, terms.trusted);
  if (forged) return { ok: false, refusal: forged };
  const presentation = presentationSchema.safeParse(jws.payload);
  if (!presentation.success) {
    return { ok: false, refusal: { code: 'schema', at: (presentation.error.issues[0]?.path ?? []).join('.') } };
  }
  const refusal = requestRefusal(presentation.data, request, terms.now);
  return refusal ? { ok: false, refusal } : certificateIn(presentation.data, terms);
}

function requestRefusal(
  { aud, nonce, exp }: Presentation,
  request: PresentationRequest,
  now: number,
): PresentationRefusal | undefined {
  if (aud !== request.audience) return { code: 'wrong-audience', audience: aud };
  if (nonce !== request.nonce) return { code: 'wrong-nonce' };
  if (request.usedAt !== null) return { code: 'replayed', at: request.usedAt };
  const since = Math.min(exp * 1000, request.expiresAt);
  return now >= since ? { code: 'stale', since } : undefined;
}

async function certificateIn(presentation: Presentation, terms: VerificationTerms): Promise<Verification> {
  const [envelope] = presentation.verifiableCredential;
  const verification = await verifyCertificate(envelope.id.slice(ENVELOPE.length), terms);
  if (verification.ok && verification.certificate.holder.id !== presentation.sub) {
    return { ok: false, refusal: { code: 'schema', at: 'sub' } };
  }
  return verification;
}
