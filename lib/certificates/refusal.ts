/** Why a certificate is refused. */
export type Refusal =
  /** Not a signed document of the kind that we write. */
  | { code: 'unreadable' }
  /** It says that another issuer made it. */
  | { code: 'wrong-issuer'; issuer: string }
  /** Signed with a key that the issuer never had. */
  | { code: 'unknown-key' }
  /** Signed with another key than it names, with one of another issuer, or at a time when that key was not in use. */
  | { code: 'wrong-key' }
  /** Signed when somebody else may have had the key. */
  | { code: 'key-compromised' }
  /** Not a sign of it is as it was signed. */
  | { code: 'tampered' }
  /** The signature fits, but something is missing or not as it must be. */
  | { code: 'schema'; at: string }
  /** The signature fits, but the issuer has no record of it. */
  | { code: 'not-ours' }
  | { code: 'not-yet-valid'; from: number }
  | { code: 'expired'; since: number }
  | { code: 'suspended'; reason: string }
  | { code: 'revoked'; reason: string }
  /** Another certificate took its place. */
  | { code: 'superseded' };

/** Why a presentation is refused, over and above the certificate in it. */
export type PresentationRefusal =
  | Refusal
  /** Made for somebody else. */
  | { code: 'wrong-audience'; audience: string }
  /** Made for another request than this one. */
  | { code: 'wrong-nonce' }
  /** Too old, or the request is. */
  | { code: 'stale'; since: number }
  /** Shown before. */
  | { code: 'replayed'; at: number };
