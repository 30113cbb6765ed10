import { micromark } from 'micromark';
import { elementsIn, type XmlElement, type XmlNode } from './read-xml';

/** Markdown as XHTML that an item may hold. HTML in it stays text, and links lead to the web or nowhere. */
export function xhtmlOf(markdown: string): string {
  return micromark(markdown);
}

/** The same for a text of one line, without the paragraph around it. */
export function inlineXhtmlOf(markdown: string): string {
  return xhtmlOf(markdown).replace(/^<p>([\s\S]*)<\/p>\s*$/, '$1');
}

const WRAPPED: Readonly<Record<string, string>> = { em: '*', i: '*', strong: '**', b: '**', code: '`' };
const PLAIN = [
  'p',
  'div',
  'span',
  'ul',
  'ol',
  'li',
  'br',
  'hr',
  'a',
  'blockquote',
  'pre',
  'qti-prompt',
  'qti-item-body',
];
const HEADING = /^h[1-6]$/;

/** Elements whose content would be lost or would do something if it were taken for text. */
export const NOT_TEXT = ['script', 'style', 'object', 'iframe', 'video', 'audio', 'math', 'svg', 'img', 'table'];

/**
 * XHTML as Markdown. What Markdown has no sign for keeps its text.
 *
 * @returns whether something was dropped beside.
 */
export function markdownOf(nodes: readonly XmlNode[]): { markdown: string; dropped: boolean } {
  const dropped = nodes.some((node) => typeof node !== 'string' && isDropped(node));
  const markdown = nodes
    .map((node) => block(node, ''))
    .join('')
    .replace(/[ \t]+\n/g, '\n')
    .replace(/\n{3,}/g, '\n\n')
    .trim();
  return { markdown, dropped };
}

function isDropped(node: XmlElement): boolean {
  return [node, ...elementsIn(node)].some(({ name }) => {
    if (name in WRAPPED || PLAIN.includes(name) || HEADING.test(name)) return false;
    return !name.startsWith('qti-');
  });
}

function block(node: XmlNode, indent: string): string {
  if (typeof node === 'string') return escaped(node.replace(/\s+/g, ' '));
  const { name, children, attributes } = node;
  const inner = () => children.map((child) => block(child, indent)).join('');
  if (NOT_TEXT.includes(name)) return '';
  if (name in WRAPPED) return wrapped(inner(), WRAPPED[name] ?? '');
  if (HEADING.test(name)) return `\n\n### ${inner().trim()}\n\n`;
  if (name === 'br') return '  \n';
  if (name === 'hr') return '\n\n---\n\n';
  if (name === 'a') return linked(inner(), attributes.href ?? '');
  if (name === 'ul' || name === 'ol') return `\n\n${items(node, indent)}\n\n`;
  if (name === 'p' || name === 'div' || name === 'blockquote' || name === 'qti-prompt')
    return `\n\n${inner().trim()}\n\n`;
  return inner();
}

function wrapped(text: string, sign: string): string {
  const [, before = '', inner = '', after = ''] = /^(\s*)([\s\S]*?)(\s*)$/.exec(text) ?? [];
  return inner === '' ? text : `${before}${sign}${inner}${sign}${after}`;
}

function linked(text: string, address: string): string {
  return /^https?:\/\//.test(address) ? `[${text}](${address})` : text;
}

function items({ name, children }: XmlElement, indent: string): string {
  const entries = children.filter((child): child is XmlElement => typeof child !== 'string' && child.name === 'li');
  return entries
    .map((entry, index) => {
      const sign = name === 'ol' ? `${index + 1}. ` : '- ';
      const text = entry.children
        .map((child) => block(child, `${indent}   `))
        .join('')
        .trim();
      return `${indent}${sign}${text.replace(/\n+/g, `\n${indent}   `)}`;
    })
    .join('\n');
}

/** Signs that would turn plain text into something else. */
function escaped(text: string): string {
  return text.replace(/([\\`*_[\]<>])/g, '\\$1').replace(/^(\s*)([#+-]|\d+\.)(?=\s)/, '$1\\$2');
}
