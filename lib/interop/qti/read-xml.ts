import { XMLParser, XMLValidator } from 'fast-xml-parser';
import type { Refused } from './terms';

/** An element, or a piece of text. Names without the prefix of their namespace. */
export type XmlNode =
  | { name: string; attributes: Readonly<Record<string, string>>; children: readonly XmlNode[] }
  | string;
export type XmlElement = Exclude<XmlNode, string>;

/** Deepest nesting that is taken, far beyond what an item needs. */
const DEEPEST = 60;

const parser = new XMLParser({
  preserveOrder: true,
  ignoreAttributes: false,
  attributeNamePrefix: '',
  removeNSPrefix: true,
  parseTagValue: false,
  parseAttributeValue: false,
  trimValues: false,
  cdataPropName: '#cdata',
  // Entities of their own are refused before; the five of XML itself are read.
  processEntities: true,
  htmlEntities: false,
});

/**
 * Reads XML that a stranger made. Whoever declares a document type, and with it entities or files elsewhere, is refused unread.
 *
 * @param file  Named in the refusal.
 */
export function readXml(bytes: Uint8Array, file: string): XmlElement | Refused {
  const refuse = (refused: Refused['refused'], what = ''): Refused => ({ refused, file, what });
  const text = decode(bytes);
  if (text === undefined) return refuse('not-utf-8');
  if (/<!\s*(DOCTYPE|ENTITY|ELEMENT|ATTLIST|NOTATION)/i.test(withoutCdata(text))) return refuse('doctype');
  if (deepest(text) > DEEPEST) return refuse('too-deep', String(DEEPEST));
  const valid = XMLValidator.validate(text);
  if (valid !== true) return refuse('not-xml', `${valid.err.line}:${valid.err.col}`);
  const root = (parser.parse(text) as RawNode[]).map(nodeOf).find((node) => typeof node !== 'string');
  return root ?? refuse('not-xml');
}

function decode(bytes: Uint8Array): string | undefined {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    const [, encoding = 'utf-8'] = /^\s*<\?xml[^>]*encoding\s*=\s*["']([^"']+)["']/.exec(text) ?? [];
    return /^utf-?8$/i.test(encoding) ? text : undefined;
  } catch {
    return undefined;
  }
}

/** What stands in character data declares nothing. */
function withoutCdata(text: string): string {
  return text.replace(/<!\[CDATA\[[\s\S]*?\]\]>/g, '').replace(/<!--[\s\S]*?-->/g, '');
}

/** Counted before anything is parsed, since a parser would have to keep them all. */
function deepest(text: string): number {
  let [depth, most] = [0, 0];
  for (const [tag] of withoutCdata(text).matchAll(/<\/?[A-Za-z_][^<>]*>/g)) {
    if (tag.startsWith('</')) depth--;
    else if (!tag.endsWith('/>')) most = Math.max(most, ++depth);
  }
  return most;
}

type RawNode = Record<string, unknown>;

function nodeOf(raw: RawNode): XmlNode {
  if ('#text' in raw) return String(raw['#text']);
  if ('#cdata' in raw) return (raw['#cdata'] as RawNode[]).map((part) => String(part['#text'] ?? '')).join('');
  const name = Object.keys(raw).find((key) => key !== ':@') ?? '';
  // The declaration and instructions to some programme are no part of the document.
  if (name.startsWith('?')) return '';
  const attributes = Object.entries((raw[':@'] ?? {}) as Record<string, unknown>);
  return {
    name,
    attributes: Object.fromEntries(attributes.map(([key, value]) => [key, String(value)])),
    children: (raw[name] as RawNode[]).map(nodeOf),
  };
}

/** Elements inside, of whatever depth, in order. */
export function* elementsIn(node: XmlElement): Generator<XmlElement> {
  for (const child of node.children) {
    if (typeof child === 'string') continue;
    yield child;
    yield* elementsIn(child);
  }
}

/** The first element of a name inside; undefined where there is none. */
export function findElement(node: XmlElement, name: string): XmlElement | undefined {
  for (const element of elementsIn(node)) if (element.name === name) return element;
  return undefined;
}

export function childrenOf(node: XmlElement, name: string): XmlElement[] {
  return node.children.filter((child): child is XmlElement => typeof child !== 'string' && child.name === name);
}

/** All text inside, as it stands. */
export function textOf(node: XmlNode): string {
  return typeof node === 'string' ? node : node.children.map(textOf).join('');
}
