/** A domain that is kept from ever existing. @source RFC 2606, section 2. */
const NOWHERE = '.invalid';

const HANDLE = /^[a-z0-9]+(?:[.-][a-z0-9]+)*$/;
const SHORT_NAME = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;

/** The parts of a user name such as `kit@harrow-bay`. */
export interface UserName {
  handle: string;
  /** The organisation's short name; has no dot, which tells a user name from an e-mail. */
  slug: string;
}

/** Whether something may stand before the @ of a user name: 2 to 32 small letters and digits, dots or dashes between. */
export function isHandle(text: string): boolean {
  return text.length >= 2 && text.length <= 32 && HANDLE.test(text);
}

/** Whether something may be an organisation's short name: 2 to 32 small letters and digits, dashes between. */
export function isShortName(text: string): boolean {
  return text.length >= 2 && text.length <= 32 && SHORT_NAME.test(text);
}

export function formatUserName({ handle, slug }: UserName): string {
  return `${handle}@${slug}`;
}

/** What a person signs in with, as it is stored: an e-mail as it is, a user name made into an address that gets no mail. */
export function storedAddress(typed: string): string {
  const name = typed.trim().toLowerCase();
  const [, domain = ''] = name.split('@');
  return domain.includes('.') ? name : `${name}${NOWHERE}`;
}

/** The stored address as people know it. */
export function shownName(address: string): string {
  return address.endsWith(NOWHERE) ? address.slice(0, -NOWHERE.length) : address;
}

/** Whether mail can be sent there. */
export function takesMail(address: string): boolean {
  return !address.endsWith(NOWHERE);
}

/** Without signs that nobody sees: two names that look alike would be two people. */
const E_MAIL = /^[^\s\p{C}@<>"(),:;\\[\]]+@[a-z0-9-]+(?:\.[a-z0-9-]+)+$/u;

/**
 * What somebody of an organisation is to sign in with, as it is stored: an e-mail, or a handle that becomes a user name
 * of that organisation.
 *
 * @returns undefined when it is neither.
 */
export function addressFrom(typed: string, slug: string): string | undefined {
  const name = typed.trim().toLowerCase();
  if (name.length > 200) return undefined;
  if (isHandle(name)) return storedAddress(formatUserName({ handle: name, slug }));
  if (name === `${name.split('@')[0]}@${slug}` && isHandle(name.split('@')[0] ?? '')) return storedAddress(name);
  return E_MAIL.test(name) && takesMail(name) ? name : undefined;
}
