import type { Said } from './say';

/** What was said without marks of Markdown, for places that take words alone: a name, an announcement. */
export function plainText(said: Said): string {
  if ('text' in said) return said.text;
  return said.markdown
    .replace(/!?\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replace(/<\/?[a-z][^>]*>/gi, '')
    .replace(/^\s*(?:#{1,6}|[-*+>]|\d+\.)\s+/gm, '')
    .replace(/(\*{1,3}|__)(?=\S)([^*\n]*[^*\s])\1/g, '$2')
    .replace(/(?<!\w)_([^_\n]+)_(?!\w)/g, '$1')
    .replaceAll('`', '')
    .replace(/\s+/g, ' ')
    .trim();
}
