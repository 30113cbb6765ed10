import type { HashedName } from './certificate';

/**
 * A name, hashed with its salt.
 *
 * @source Open Badges 3.0, IdentityHash: SHA-256 of the identifier followed by the salt, both UTF-8, in hex.
 */
export async function hashedName(name: string, salt: string): Promise<HashedName> {
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(`${plain(name)}${salt}`));
  const hex = [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return { hash: `sha256$${hex}`, salt };
}

/** Whether a certificate is made out to a name, however it is spaced. */
export async function isNamed(hashed: HashedName, name: string): Promise<boolean> {
  return (await hashedName(name, hashed.salt)).hash === hashed.hash.toLowerCase();
}

function plain(name: string): string {
  return name.normalize('NFC').trim().replace(/\s+/g, ' ');
}
