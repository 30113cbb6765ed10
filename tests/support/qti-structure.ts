import type { XmlElement, XmlNode } from 'libxml2-wasm';
import { XmlElement as Element } from 'libxml2-wasm';

/**
 * The structure of a QTI 3.0 item, as far as ours use it: what attributes an element must and may have, and what may stand
 * inside, in order. No schema: the official one could not be had.
 *
 * @source 1EdTech QTI 3.0, ASI information model and XML binding, by ../shared/reference/competency.md 4.3 (names, order of an
 *   item's parts, templates); attributes and children from memory.
 */
interface Rule {
  must?: readonly string[];
  may?: readonly string[];
  /** Of the names of the children, each behind a blank. */
  children?: RegExp;
  /** Text may stand inside. */
  text?: true;
}

const FLOW = '(?: (?:p|div|ul|ol|pre|blockquote|hr|h[1-6]|img|qti-rubric-block|qti-[a-z-]+-interaction))*';
const INLINE = '(?: (?:em|strong|code|a|br|img|qti-printed-variable|qti-text-entry-interaction))*';
const ONE = ' qti-[a-z-]+';
const whole = (pattern: string) => new RegExp(`^(?:${pattern})$`);
const flow: Rule = { children: whole(FLOW) };
const inline: Rule = { children: whole(INLINE), text: true };
/** Blocks, or a line without one. */
const either: Rule = { children: whole(`${FLOW}|${INLINE}`), text: true };
const leaf: Rule = { text: true };
const expression = (count: string): Rule => ({ children: whole(`(?:${ONE})${count}`) });

const rules: Readonly<Record<string, Rule>> = {
  'qti-assessment-item': {
    must: ['identifier', 'title', 'adaptive', 'time-dependent'],
    may: ['lang'],
    children: whole(
      '(?: qti-response-declaration)+(?: qti-outcome-declaration)*(?: qti-template-declaration)*(?: qti-template-processing)?' +
        ' qti-item-body(?: qti-response-processing)?(?: qti-modal-feedback)*',
    ),
  },
  'qti-response-declaration': {
    must: ['identifier', 'cardinality', 'base-type'],
    children: whole('(?: qti-default-value)?(?: qti-correct-response)?(?: qti-mapping)?'),
  },
  'qti-outcome-declaration': {
    must: ['identifier', 'cardinality', 'base-type'],
    may: ['normal-minimum', 'normal-maximum', 'external-scored'],
    children: whole('(?: qti-default-value)?'),
  },
  'qti-template-declaration': { must: ['identifier', 'cardinality', 'base-type'], children: whole('') },
  'qti-template-processing': { children: whole('(?: qti-set-(?:template-value|correct-response))+') },
  'qti-set-template-value': { must: ['identifier'], ...expression('') },
  'qti-set-correct-response': { must: ['identifier'], ...expression('') },
  'qti-set-outcome-value': { must: ['identifier'], ...expression('') },
  'qti-default-value': { children: whole('(?: qti-value)+') },
  'qti-correct-response': { children: whole('(?: qti-value)+') },
  'qti-value': leaf,
  'qti-mapping': {
    must: ['default-value'],
    may: ['lower-bound', 'upper-bound'],
    children: whole('(?: qti-map-entry)+'),
  },
  'qti-map-entry': { must: ['map-key', 'mapped-value'], children: whole('') },
  'qti-item-body': { children: whole(`${FLOW.slice(0, -1)}+`) },
  'qti-rubric-block': { must: ['use', 'view'], children: whole(' qti-content-body') },
  'qti-content-body': flow,
  'qti-modal-feedback': {
    must: ['outcome-identifier', 'identifier', 'show-hide'],
    children: whole(' qti-content-body'),
  },
  'qti-choice-interaction': {
    must: ['response-identifier', 'max-choices'],
    may: ['shuffle'],
    children: whole('(?: qti-prompt)?(?: qti-simple-choice)+'),
  },
  'qti-order-interaction': {
    must: ['response-identifier'],
    may: ['shuffle'],
    children: whole('(?: qti-prompt)?(?: qti-simple-choice)+'),
  },
  'qti-simple-choice': { must: ['identifier'], ...either },
  'qti-hotspot-interaction': {
    must: ['response-identifier', 'max-choices'],
    children: whole('(?: qti-prompt)? (?:img|object)(?: qti-hotspot-choice)+'),
  },
  'qti-hotspot-choice': { must: ['identifier', 'shape', 'coords'], may: ['hotspot-label'], children: whole('') },
  'qti-text-entry-interaction': { must: ['response-identifier'], may: ['expected-length'], children: whole('') },
  'qti-extended-text-interaction': {
    must: ['response-identifier'],
    may: ['expected-length'],
    children: whole('(?: qti-prompt)?'),
  },
  'qti-response-processing': { children: whole('(?: qti-(?:response-condition|set-outcome-value))*') },
  'qti-response-condition': { children: whole(' qti-response-if') },
  'qti-response-if': { children: whole(`${ONE}(?: qti-set-outcome-value)+`) },
  'qti-match': expression('{2}'),
  'qti-equal': { must: ['tolerance-mode', 'tolerance'], ...expression('{2}') },
  'qti-or': expression('+'),
  'qti-sum': expression('+'),
  'qti-product': expression('+'),
  'qti-min': expression('+'),
  'qti-max': expression('+'),
  'qti-subtract': expression('{2}'),
  'qti-divide': expression('{2}'),
  'qti-power': expression('{2}'),
  'qti-math-operator': { must: ['name'], ...expression('+') },
  'qti-math-constant': { must: ['name'], children: whole('') },
  'qti-round-to': { must: ['rounding-mode', 'figures'], ...expression('') },
  'qti-random-integer': { must: ['min', 'max'], may: ['step'], children: whole('') },
  'qti-variable': { must: ['identifier'], children: whole('') },
  'qti-correct': { must: ['identifier'], children: whole('') },
  'qti-map-response': { must: ['identifier'], children: whole('') },
  'qti-base-value': { must: ['base-type'], ...leaf },
  'qti-printed-variable': { must: ['identifier'], may: ['format'], children: whole('') },
  div: flow,
  blockquote: flow,
  p: inline,
  em: inline,
  strong: inline,
  a: { must: ['href'], ...inline },
  code: { may: ['class'], ...leaf },
  pre: { children: whole(' code') },
  ul: { children: whole('(?: li)+') },
  ol: { may: ['start'], children: whole('(?: li)+') },
  li: { children: whole(`${INLINE}${FLOW}`), text: true },
  br: { children: whole('') },
  hr: { children: whole('') },
  img: { must: ['src', 'alt'], may: ['width', 'height'], children: whole('') },
  ...Object.fromEntries([1, 2, 3, 4, 5, 6].map((level) => [`h${level}`, inline])),
};

/** What of an item is not as the standard has it, from the element down. */
export function structureFaults(element: XmlElement): string[] {
  const rule = rules[element.name];
  if (!rule) return [`${element.name} is not known`];
  const { must = [], may = [], children, text } = rule;
  const attributes = element.attrs.map(({ name }) => name);
  const inside = nodesIn(element);
  const elements = inside.filter((node) => node instanceof Element);
  const names = elements.map(({ name }) => ` ${name}`).join('');
  const said = inside.some((node) => !(node instanceof Element) && node.content.trim() !== '');
  return [
    ...must.filter((name) => !attributes.includes(name)).map((name) => `${element.name} has no ${name}`),
    ...attributes
      .filter((name) => ![...must, ...may].includes(name))
      .map((name) => `${element.name} has no room for ${name}`),
    ...((children ?? whole('')).test(names) ? [] : [`${element.name} cannot hold${names}`]),
    ...(said && !text ? [`${element.name} cannot hold text`] : []),
    ...elements.flatMap(structureFaults),
  ];
}

function nodesIn({ firstChild }: XmlElement): XmlNode[] {
  const nodes: XmlNode[] = [];
  for (let node = firstChild; node; node = node.next) nodes.push(node);
  return nodes;
}
