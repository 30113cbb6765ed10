/** Without those that are read as another, or as a digit. */
const LETTERS = 'ACDEFHJKLMNPRTVWXY';

/**
 * What somebody is called where no name may stand: two letters and three digits, such as `KV 417`.
 *
 * @param digest  Bytes that follow from assignment and person, and that nobody can follow back; five of them count.
 */
export function handleFrom(digest: Uint8Array): string {
  const [first = 0, second = 0, a = 0, b = 0, c = 0] = digest;
  const letters = [first, second].map((byte) => LETTERS[byte % LETTERS.length]).join('');
  const number = (a * 65_536 + b * 256 + c) % 1000;
  return `${letters} ${String(number).padStart(3, '0')}`;
}
