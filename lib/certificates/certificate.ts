/**
 * What a certificate says, in our own terms. `credential.ts` writes it as an Open Badge; `read-credential.ts` reads it back.
 * Times are milliseconds since 1970, UTC, to the whole second. Addresses are absolute.
 */
export interface Certificate {
  /** Where it can be looked up, which is its id. */
  id: string;
  issuer: { id: string; name: string };
  holder: Holder;
  scheme: CertifiedScheme;
  validFrom: number;
  validUntil: number;
  results: readonly CertifiedResult[];
  status: StatusPlace;
}

export interface Holder {
  /** Stands for the person towards this issuer and nobody else. */
  id: string;
  /** Null where the holder does not want their name to be checked. */
  name: HashedName | null;
}

/** A name that can be checked by whoever knows it, and not be read. */
export interface HashedName {
  /** `sha256$` and 64 hex digits. */
  hash: string;
  salt: string;
}

/** What the holder was certified under. */
export interface CertifiedScheme {
  /** Address of the scheme in this version. */
  id: string;
  name: string;
  version: string;
  /** What the holder may be relied on to do, where, and what not. */
  claim: string;
  /** What had to be shown, and how it was decided. */
  criteria: string;
  /** Topics that it covers, each with the public standards that it corresponds to. */
  alignments: readonly { name: string; about: string; framework: string; code: string; url: string }[];
}

/** A result that the holder wants to be seen, on a scale. */
export interface CertifiedResult {
  /** Of its topic. */
  id: string;
  name: string;
  value: number;
  /** What had to be reached. */
  cut: number;
  min: number;
  max: number;
}

/** Where the certificate's status stands: at the same place of both lists. */
export interface StatusPlace {
  index: number;
  /** Address of the list of what is not to be accepted at present: suspended, superseded or revoked. */
  suspensions: string;
  /** Address of the list of what was revoked or superseded for good. */
  revocations: string;
}

/** Results that may stand in a certificate: none below its cut, so that nobody is shown to have failed at a part. */
export function worthShowing(results: readonly CertifiedResult[]): CertifiedResult[] {
  return results.filter(({ value, cut }) => value >= cut);
}
