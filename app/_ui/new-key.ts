/** Random enough to meet no other; `crypto.randomUUID` is missing where a shop serves the page without TLS. */
export function newKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
