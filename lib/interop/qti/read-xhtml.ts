import { elementsIn, type XmlElement, type XmlNode } from './read-xml';
import { ITEM_NAMESPACE } from './terms';
import { SAFE_ADDRESS } from './write-xhtml';

const SIGNS: Readonly<Record<string, string>> = { em: '*', i: '*', strong: '**', b: '**', code: '`' };
const BLOCKS = ['p', 'div', 'blockquote', 'qti-prompt', 'qti-content-body', 'pre'];
const KEPT = [...BLOCKS, 'ul', 'ol', 'li', 'br', 'hr', 'a', 'span', 'qti-printed-variable'];
const HEADING = /^h[1-6]$/;

/** Whose content would do something, or say nothing, if it were taken for text. Pictures are taken elsewhere. */
const NOT_TEXT = ['script', 'style', 'object', 'iframe', 'img', 'picture', 'table', 'svg', 'math'];

export interface ReadMarkdown {
  markdown: string;
  /** Something was left out, or has lost its form. */
  dropped: boolean;
}

/** XHTML as Markdown. What Markdown has no sign for keeps its text; a number that is drawn stands in braces. */
export function markdownOf(nodes: readonly XmlNode[]): ReadMarkdown {
  const dropped = nodes.some((node) => typeof node !== 'string' && [node, ...elementsIn(node)].some(isDropped));
  const markdown = nodes
    .map((node) => block(node))
    .join('')
    .replace(/[ \t]+\n/g, (blanks) => (blanks === '  \n' ? blanks : '\n'))
    .replace(/\n{3,}/g, '\n\n')
    .trim();
  return { markdown, dropped };
}

/** Of a text that takes one line. */
export function lineOf(nodes: readonly XmlNode[]): ReadMarkdown {
  const { markdown, dropped } = markdownOf(nodes);
  return { markdown: markdown.replace(/\s+/g, ' '), dropped };
}

function isDropped({ name, namespace }: XmlElement): boolean {
  if (namespace !== ITEM_NAMESPACE) return true;
  return name !== 'img' && !(name in SIGNS) && !KEPT.includes(name) && !HEADING.test(name);
}

function block(node: XmlNode): string {
  if (typeof node === 'string') return escaped(node.replace(/\s+/g, ' '));
  const { name, namespace, children, attributes } = node;
  if (namespace !== ITEM_NAMESPACE || NOT_TEXT.includes(name)) return '';
  const inner = () => children.map(block).join('');
  if (name === 'code') return codeOf(children);
  if (name in SIGNS) return wrapped(inner(), SIGNS[name] ?? '');
  if (HEADING.test(name)) return `\n\n### ${inner().trim()}\n\n`;
  if (BLOCKS.includes(name)) return `\n\n${inner().trim()}\n\n`;
  switch (name) {
    case 'br':
      return '  \n';
    case 'hr':
      return '\n\n---\n\n';
    case 'a':
      return linked(inner(), attributes.href ?? '');
    case 'ul':
    case 'ol':
      return `\n\n${items(node)}\n\n`;
    case 'qti-printed-variable':
      return `{${drawnName(attributes.identifier ?? '')}}`;
    default:
      return inner();
  }
}

/** The name that a variable of an item goes by in a question: ours begin with a letter of their own in items. */
export function drawnName(identifier: string): string {
  if (identifier === 'ANSWER') return 'answer';
  return identifier
    .replace(/^N_(?=[a-z])/i, '')
    .replace(/[^a-z0-9_]/gi, '_')
    .slice(0, 20);
}

function codeOf(children: readonly XmlNode[]): string {
  const text = children
    .map((child) => (typeof child === 'string' ? child : ''))
    .join('')
    .replace(/\s+/g, ' ')
    .trim();
  return text === '' || text.includes('`') ? escaped(text) : `\`${text}\``;
}

function wrapped(text: string, sign: string): string {
  const [, before = '', inner = '', after = ''] = /^(\s*)([\s\S]*?)(\s*)$/.exec(text) ?? [];
  return inner === '' ? text : `${before}${sign}${inner}${sign}${after}`;
}

function linked(text: string, address: string): string {
  if (!SAFE_ADDRESS.test(address) || /[\s<>()]/.test(address)) return text;
  return `[${text}](${address})`;
}

function items({ name, children }: XmlElement): string {
  const entries = children.filter((child): child is XmlElement => typeof child !== 'string' && child.name === 'li');
  return entries
    .map((entry, index) => {
      const sign = name === 'ol' ? `${index + 1}. ` : '- ';
      const text = entry.children.map(block).join('').trim();
      return sign + text.replace(/\n+/g, `\n${' '.repeat(sign.length)}`);
    })
    .join('\n');
}

/** Signs that would turn plain text into something else. */
function escaped(text: string): string {
  return text
    .replace(/[\\`*_[\]<>~&]/g, '\\$&')
    .replace(/^(\s*)([#+-]|=+(?=\s*$))(?=\s|$)/, '$1\\$2')
    .replace(/^(\s*\d{1,9})([.)])(?=\s|$)/, '$1\\$2');
}
