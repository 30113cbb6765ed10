import type { Certificate } from './certificate';
import { signatureRefusal } from './check-signature';
import type { Issuer } from './issuer-key';
import { readJws } from './jws';
import { type ReadCertificate, readCredential } from './read-credential';
import type { Refusal } from './refusal';

/** How a certificate stands with its issuer. */
export type Standing =
  | { code: 'in-force' }
  | { code: 'suspended'; reason: string }
  | { code: 'revoked'; reason: string }
  | { code: 'superseded' };

/** What becomes of a certificate that is looked at. What it says is told with a refusal only once the signature fits. */
export type Verification<R = Refusal> =
  | { ok: true; certificate: Certificate; signedAt: number }
  | { ok: false; refusal: R; certificate?: Certificate };

export interface VerificationTerms {
  /** Issuers that are known here, each with all of its keys. */
  trusted: readonly Issuer[];
  /** Milliseconds since 1970, UTC. */
  now: number;
  /** What the issuer's records say of a certificate; undefined where they know none of that id. */
  standingOf(certificate: Certificate): Promise<Standing | undefined>;
}

/**
 * Checks a signed certificate: who made it, whether a sign of it was changed, whether it is in force.
 *
 * What was revoked or superseded is said before what has run out, since it would not have been good for as long.
 */
export async function verifyCertificate(compact: string, terms: VerificationTerms): Promise<Verification> {
  const jws = readJws(compact.trim());
  if (jws?.type !== 'JWT') return { ok: false, refusal: { code: 'unreadable' } };
  const refusal = await signatureRefusal(jws, terms.trusted);
  if (refusal) return { ok: false, refusal };
  const credential = readCredential(jws.payload);
  if (!credential.ok) return { ok: false, refusal: { code: 'schema', at: credential.at } };
  return judged(credential.read, await terms.standingOf(credential.read.certificate), terms.now);
}

function judged({ certificate, signedAt }: ReadCertificate, standing: Standing | undefined, now: number): Verification {
  const refusal = standing ? standingRefusal(certificate, standing, now) : ({ code: 'not-ours' } as const);
  if (!refusal) return { ok: true, certificate, signedAt };
  return { ok: false, refusal, ...(standing && { certificate }) };
}

/** Whether a certificate is in force at a moment, whoever signed it; undefined where it is. Its last second does not count. */
export function standingRefusal(
  { validFrom, validUntil }: Pick<Certificate, 'validFrom' | 'validUntil'>,
  standing: Standing,
  now: number,
): Refusal | undefined {
  if (standing.code === 'revoked' || standing.code === 'superseded') return standing;
  if (now < validFrom) return { code: 'not-yet-valid', from: validFrom };
  if (now >= validUntil) return { code: 'expired', since: validUntil };
  return standing.code === 'suspended' ? standing : undefined;
}
