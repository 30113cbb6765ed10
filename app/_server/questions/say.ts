import { createTranslator } from 'next-intl';
import { showAtResolution, showNumber, withUnit } from '@/app/_ui/show-quantity';
import messages from '@/content/messages/en.json' with { type: 'json' };
import type { Catalogue } from '@/lib/catalogue';
import type { Line, Named, Value } from '@/lib/questions/line';
import type { QuestionContent } from '@/lib/questions/question-content';
import { PLACES_KIND } from '@/lib/questions/written/targets-on';

/** Words to be shown: plain, or Markdown that somebody wrote. */
export type Said = { text: string } | { markdown: string };

/**
 * Turns lines into words.
 *
 * @param content  The kind whose words they are; undefined for a written question, which has Markdown, and only says of a
 *   drawing's places what there is to see.
 */
export function sayer(content: QuestionContent | undefined, catalogue: Catalogue): (line: Line) => Said {
  const said = content ?? catalogue.questions.get(PLACES_KIND);
  const words = said && createTranslator({ locale: 'en', messages: said.text.en.lines, onError: fail });
  const sayText = (line: Line): string => {
    if ('markdown' in line) return line.markdown;
    if ('text' in line) return line.text;
    if (!words) throw new RangeError(`There are no words for ${line.say}`);
    return words(line.say, valuesOf(line.with ?? {}));
  };
  const valuesOf = (values: Readonly<Record<string, Value>>) =>
    Object.fromEntries(Object.entries(values).map(([key, value]) => [key, show(value)]));
  const show = (value: Value): string | number => {
    if (typeof value === 'string') return value;
    // A whole number stays one, for plurals.
    if (typeof value === 'number') return Number.isInteger(value) ? value : showNumber(value);
    if ('quantity' in value) return withUnit(showTo(value.quantity, value.decimals), value.unit);
    if ('number' in value) return showTo(value.number, value.decimals);
    if ('list' in value) return list.format(value.list.map((item) => String(show(item))));
    return 'line' in value ? sayText(value.line) : nameOf(value, catalogue);
  };
  return (line) => ('say' in line ? { text: sayText(line) } : line);
}

/** A calculation can only be followed with the digits that it was made from. */
function showTo(value: number, decimals: number | undefined): string {
  return decimals === undefined ? showNumber(value) : showAtResolution(value, Number(`1e-${decimals}`));
}

/** A line without words is a fault of content, not something to show. */
function fail(error: Error): never {
  throw error;
}

const list = new Intl.ListFormat('en', { type: 'conjunction' });
const interfaceWords = createTranslator({ locale: 'en', messages });

/** What something is called. @throws RangeError when content has no such thing. */
export function nameOf(named: { name: Named; id: string; of?: string }, catalogue: Catalogue): string {
  const found = findName(named, catalogue);
  if (found === undefined)
    throw new RangeError(`There is no ${named.name} ${named.id}${named.of ? ` of ${named.of}` : ''}`);
  return found;
}

function findName({ name, id, of = '' }: { name: Named; id: string; of?: string }, catalogue: Catalogue) {
  const rig = catalogue.rigs.get(of);
  switch (name) {
    case 'rig':
      return catalogue.rigs.get(id)?.text.en.name;
    case 'element':
      return rig?.elements.find((element) => element.id === id)?.text.en;
    case 'port':
      return rig?.ports.find((port) => port.id === id)?.text.en;
    case 'node':
      return rig && nodeName(id, rig);
    case 'cause':
      return catalogue.causes.get(id)?.text.en.name;
    case 'cause-how':
      return catalogue.causes.get(id)?.text.en.how;
    case 'repair':
      return catalogue.causes.get(of)?.repairs.find((repair) => repair.id === id)?.text.en;
    case 'check':
      return catalogue.checks.get(id)?.text.en.name;
    case 'check-quantity':
      return catalogue.checks.get(of)?.text.en.quantities[id];
    case 'gauge':
      return catalogue.gauges.get(id)?.text.en.name;
    case 'fuel':
      return catalogue.fuels.get(id)?.text.en;
    case 'topic':
      return catalogue.topics.get(id)?.text.en.name;
    case 'restoring':
      return catalogue.restoring.get(id)?.text.en.name;
    case 'spn':
    case 'fmi':
      return catalogue.codeNames[name][id];
    default:
      return spoken(NAMESPACES[name], id);
  }
}

const NAMESPACES = {
  condition: 'conditionsShort',
  area: 'areas',
  verdict: 'verdicts',
  comparison: 'comparisons',
} as const;

function spoken(namespace: string, id: string): string | undefined {
  const key = `${namespace}.${id}` as Parameters<typeof interfaceWords>[0];
  return interfaceWords.has(key) ? interfaceWords(key) : undefined;
}

type Rig = Catalogue['rigs'] extends ReadonlyMap<string, infer R> ? R : never;

/** A line is called by what it joins. */
function nodeName(id: string, { nodes, elements }: Rig): string | undefined {
  if (!nodes.some((node) => node.id === id)) return undefined;
  const from = elements.find((element) => 'to' in element && element.to === id);
  const to = elements.find((element) => 'from' in element && element.from === id);
  if (!from || !to) return (from ?? to)?.text.en;
  return interfaceWords('drawing.between', { from: from.text.en, to: to.text.en });
}

/** The same, every line of it in the words that it is said in now. */
export function inWords<T>(value: T, say: (line: Line) => Said): T {
  if (Array.isArray(value)) return value.map((item) => inWords(item, say)) as T;
  if (typeof value !== 'object' || value === null) return value;
  if (isCoded(value)) return say(value) as T;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, inWords(item, say)])) as T;
}

function isCoded(value: object): value is Extract<Line, { say: string }> {
  return 'say' in value && typeof value.say === 'string';
}
