/** Where to go after signing in: a page of this site, whatever the address said. */
export function safeNext(asked: unknown, otherwise = '/learn'): string {
  if (typeof asked !== 'string' || asked.length > 500) return otherwise;
  if (!asked.startsWith('/') || !URL.canParse(asked, 'http://here.invalid')) return otherwise;
  const { origin, pathname, search } = new URL(asked, 'http://here.invalid');
  return origin === 'http://here.invalid' && !pathname.startsWith('//') ? pathname + search : otherwise;
}
