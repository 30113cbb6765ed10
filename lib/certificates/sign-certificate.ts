import type { Certificate } from './certificate';
import { credentialOf } from './credential';
import type { PrivateJwk } from './issuer-key';
import { signed } from './jws';
import { inSeconds } from './moments';

/**
 * A certificate, signed: the credential with the claims of a token beside it.
 *
 * @param key  Its id is the address of its public half.
 * @param signedAt  Milliseconds since 1970, UTC; what a key that was retired or compromised since is held against.
 * @source Open Badges 3.0, JSON Web Token proof format: iss, jti, sub, nbf and exp repeat what the credential says.
 */
export function signCertificate(
  certificate: Certificate,
  key: { id: string; jwk: PrivateJwk },
  signedAt: number,
): Promise<string> {
  const claims = {
    iss: certificate.issuer.id,
    jti: certificate.id,
    sub: certificate.holder.id,
    nbf: inSeconds(certificate.validFrom),
    exp: inSeconds(certificate.validUntil),
    iat: inSeconds(signedAt),
  };
  return signed({ ...credentialOf(certificate), ...claims }, 'JWT', key);
}
