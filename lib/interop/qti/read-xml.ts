import { XMLParser, XMLValidator } from 'fast-xml-parser';
import type { Refused } from './terms';
import { xmlSigns } from './xml';

/** An element, with the namespace that its prefix stands for and without the prefix. */
export interface XmlElement {
  name: string;
  namespace: string;
  attributes: Readonly<Record<string, string>>;
  children: readonly XmlNode[];
  /** In its file, counted from 1. */
  line: number;
}

/** An element, or a piece of text. */
export type XmlNode = XmlElement | string;

/** Deepest nesting that is taken, far beyond what an item needs. */
const DEEPEST = 60;
/** Longest attribute: a title or an address, but no picture written as one. */
const LONGEST_ATTRIBUTE = 10_000;

const CDATA = '#cdata';

const parser = new XMLParser({
  preserveOrder: true,
  ignoreAttributes: false,
  attributeNamePrefix: '',
  parseTagValue: false,
  parseAttributeValue: false,
  trimValues: false,
  cdataPropName: CDATA,
  // Read below, where it is sure that none is declared.
  processEntities: false,
  captureMetaData: true,
  maxNestedTags: DEEPEST + 2,
});

/**
 * Reads XML that a stranger made. Whoever declares a document type, and with it entities or files elsewhere, is refused unread.
 *
 * @param file  Named in the refusal.
 */
export function readXml(bytes: Uint8Array, file: string): XmlElement | Refused {
  const text = decode(bytes);
  if (text === undefined) return { refused: 'not-utf-8', file, what: '' };
  const fault = faultOf(text);
  if (fault) return { file, ...fault };
  const place = lineIn(text);
  const roots = (parser.parse(text) as RawNode[]).flatMap((raw) => nodeOf(raw, new Map(), place));
  const root = roots.find((node) => typeof node !== 'string');
  return root ?? { refused: 'not-xml', file, what: '' };
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

type Fault = Omit<Refused, 'file'>;

function faultOf(text: string): Fault | undefined {
  const at = lineIn(text);
  const bare = withoutCdata(text);
  const declared = /<!\s*([A-Z]+)/i.exec(bare);
  if (declared) return { refused: 'doctype', what: declared[1] ?? '', line: at(declared.index) };
  const entity = /&(?!(?:amp|lt|gt|quot|apos|#\d{1,7}|#x[0-9a-f]{1,6});)[^\s;<>"']*;?/i.exec(bare);
  if (entity) return { refused: 'entity', what: entity[0].slice(0, 40), line: at(entity.index) };
  const stray = xmlSigns(text).length !== text.length || /&#(?:x0*|0*);/.test(bare);
  if (stray) return { refused: 'not-xml', what: '' };
  const deep = deepAt(bare);
  if (deep !== undefined) return { refused: 'too-deep', what: String(DEEPEST), line: at(deep) };
  const long = new RegExp(`=\\s*("[^"<]{${LONGEST_ATTRIBUTE},}"|'[^'<]{${LONGEST_ATTRIBUTE},}')`).exec(bare);
  if (long) return { refused: 'attribute-long', what: String(LONGEST_ATTRIBUTE), line: at(long.index) };
  const valid = XMLValidator.validate(text);
  return valid === true ? undefined : { refused: 'not-xml', what: valid.err.code, line: valid.err.line };
}

/** What stands in character data or a comment declares nothing. As long as before, so that places stay where they are. */
function withoutCdata(text: string): string {
  return text.replace(/<!\[CDATA\[[\s\S]*?\]\]>|<!--[\s\S]*?-->/g, (found) => found.replace(/[^\n]/g, ' '));
}

/** Where it nests too deep. Counted before anything is parsed, since a parser would have to keep them all. */
function deepAt(text: string): number | undefined {
  let depth = 0;
  for (const tag of text.matchAll(/<(\/?)[^<>!?][^<>]*>/g)) {
    if (tag[1]) depth--;
    else if (!tag[0].endsWith('/>') && ++depth > DEEPEST) return tag.index;
  }
  return undefined;
}

/** Counts lines from where it was asked last, since places are asked for in their order. */
function lineIn(text: string): (at: number) => number {
  let [line, from] = [1, 0];
  return (at) => {
    if (at < from) [line, from] = [1, 0];
    for (let next = text.indexOf('\n', from); next >= 0 && next < at; next = text.indexOf('\n', from)) {
      line++;
      from = next + 1;
    }
    return line;
  };
}

type RawNode = Record<string | symbol, unknown>;
type Namespaces = ReadonlyMap<string, string>;

const META = XMLParser.getMetaDataSymbol() as symbol;

function nodeOf(raw: RawNode, around: Namespaces, lineAt: (at: number) => number): XmlNode[] {
  if ('#text' in raw) return [unescaped(String(raw['#text']))];
  if (CDATA in raw) return [(raw[CDATA] as RawNode[]).map((part) => String(part['#text'] ?? '')).join('')];
  const full = Object.keys(raw).find((key) => key !== ':@') ?? '';
  // Instructions to some programme are no part of the document.
  if (full.startsWith('?')) return [];
  const attributes = Object.entries((raw[':@'] ?? {}) as Record<string, unknown>).map(
    ([key, value]) => [key, unescaped(String(value))] as const,
  );
  const within = namespacesIn(attributes, around);
  const [, prefix = '', name = full] = /^([^:]+):(.+)$/.exec(full) ?? [];
  const line = lineAt((raw[META] as { startIndex?: number } | undefined)?.startIndex ?? 0);
  return [
    {
      name,
      namespace: within.get(prefix) ?? '',
      attributes: Object.fromEntries(attributes.filter(([key]) => !/^xmlns(:|$)/.test(key))),
      line,
      children: (raw[full] as RawNode[]).flatMap((child) => nodeOf(child, within, lineAt)),
    },
  ];
}

function namespacesIn(attributes: readonly (readonly [string, string])[], around: Namespaces): Namespaces {
  const declared = attributes.filter(([key]) => /^xmlns(:|$)/.test(key));
  if (declared.length === 0) return around;
  return new Map([...around, ...declared.map(([key, value]) => [key.slice('xmlns:'.length), value] as const)]);
}

const SIGNS: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/** The five entities that XML itself has, and signs by their numbers. */
function unescaped(text: string): string {
  return text.replace(/&(?:#x([0-9a-f]+)|#(\d+)|(\w+));/gi, (whole, hex?: string, decimal?: string, name = '') => {
    const code = hex === undefined ? Number(decimal) : Number.parseInt(hex, 16);
    if (hex === undefined && decimal === undefined) return SIGNS[name] ?? whole;
    return code <= 0x10ffff ? xmlSigns(String.fromCodePoint(code)) : '';
  });
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
  return elementChildren(node).filter((child) => child.name === name);
}

export function elementChildren({ children }: XmlElement): XmlElement[] {
  return children.filter((child) => typeof child !== 'string');
}

/** All text inside, as it stands. */
export function textOf(node: XmlNode): string {
  return typeof node === 'string' ? node : node.children.map(textOf).join('');
}
