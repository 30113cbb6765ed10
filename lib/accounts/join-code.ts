/** Digits and letters without those that are taken for others. @source Crockford, Base 32, crockford.com/base32.html. */
const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/** 32⁸ = 2⁴⁰ codes: at a try a second, a class is met by chance once in tens of thousands of years. */
export const JOIN_CODE_LENGTH = 8;

/** A join code made of random bytes. @throws when there are too few. */
export function joinCodeFrom(bytes: Uint8Array): string {
  if (bytes.length < JOIN_CODE_LENGTH)
    throw new RangeError(`${bytes.length} random bytes for ${JOIN_CODE_LENGTH} signs`);
  return [...bytes.subarray(0, JOIN_CODE_LENGTH)].map((byte) => ALPHABET[byte % ALPHABET.length]).join('');
}

/** As it is written down: two halves with a dash between. */
export function formatJoinCode(code: string): string {
  return `${code.slice(0, JOIN_CODE_LENGTH / 2)}-${code.slice(JOIN_CODE_LENGTH / 2)}`;
}

/** A code as somebody typed it: small letters, spaces, dashes and look-alikes are forgiven. Undefined when it is none. */
export function parseJoinCode(typed: string): string | undefined {
  const code = typed.toUpperCase().replace(/[\s-]/g, '').replace(/O/g, '0').replace(/[IL]/g, '1');
  const known = [...code].every((sign) => ALPHABET.includes(sign));
  return known && code.length === JOIN_CODE_LENGTH ? code : undefined;
}
