import type { Said } from './say';

/** What was said without marks of Markdown, for places that take words alone: a name, an announcement. */
export function plainText(said: Said): string {
  if ('text' in said) return said.text;
  return said.markdown
    .replace(/!?\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replace(/<[^>]*>/g, '')
    .replace(/^\s*(?:#{1,6}|[-*+>]|\d+\.)\s+/gm, '')
    .replace(/(\*\*|__|\*|`)/g, '')
    .replace(/\s+/g, ' ')
    .trim();
}
