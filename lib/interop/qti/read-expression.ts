import { elementChildren, textOf, type XmlElement } from './read-xml';

/** What a variable of an item stands for in a formula; undefined for one that is unknown. */
export type NameOf = (identifier: string) => string | undefined;

const LISTS: Readonly<Record<string, string>> = { 'qti-sum': '+', 'qti-product': '*' };
const PAIRS: Readonly<Record<string, string>> = { 'qti-subtract': '-', 'qti-divide': '/', 'qti-power': '^' };
const MATH: Readonly<Record<string, string>> = {
  abs: 'abs',
  ceil: 'ceil',
  floor: 'floor',
  exp: 'exp',
  ln: 'ln',
  log: 'log10',
  sin: 'sin',
  cos: 'cos',
  tan: 'tan',
};

/** An expression of the standard as a formula of ours; undefined where ours has nothing for it. */
export function formulaOf(expression: XmlElement, nameOf: NameOf): string | undefined {
  const { name, attributes } = expression;
  if (name === 'qti-base-value') return numberOf(textOf(expression));
  if (name === 'qti-variable') return nameOf(attributes.identifier ?? '');
  if (name === 'qti-math-constant')
    return attributes.name === 'pi' || attributes.name === 'e' ? attributes.name : undefined;
  const given = elementChildren(expression).map((child) => formulaOf(child, nameOf));
  const rounded = name === 'qti-product' ? roundedOf(expression, nameOf) : undefined;
  if (rounded !== undefined) return rounded;
  return given.every((one) => one !== undefined) && given.length > 0 ? combined(expression, given) : undefined;
}

function combined({ name, attributes }: XmlElement, given: readonly string[]): string | undefined {
  const [first = '', second = ''] = given;
  const list = LISTS[name];
  if (list !== undefined) return `(${given.join(` ${list} `)})`;
  const pair = PAIRS[name];
  if (pair !== undefined) return given.length === 2 ? `(${first} ${pair} ${second})` : undefined;
  const math = MATH[attributes.name ?? ''];
  switch (name) {
    case 'qti-math-operator':
      return math !== undefined && given.length === 1 ? `${math}(${first})` : undefined;
    case 'qti-min':
    case 'qti-max':
      return `${name.slice('qti-'.length)}(${given.join(', ')})`;
    case 'qti-round':
      return `floor(${first} + 0.5)`;
    case 'qti-integer-divide':
      return `floor(${first} / ${second})`;
    case 'qti-integer-modulus':
      return `(${first} - ${second} * floor(${first} / ${second}))`;
    case 'qti-integer-to-float':
      return first;
    default:
      return undefined;
  }
}

/** Rounding away from zero, as ours is written; see `write-formula.ts`. */
function roundedOf(product: XmlElement, nameOf: NameOf): string | undefined {
  const [sign, floor] = elementChildren(product);
  if (sign?.attributes.name !== 'signum' || floor?.attributes.name !== 'floor') return undefined;
  const [number] = elementChildren(sign);
  const of = number && formulaOf(number, nameOf);
  const floored = formulaOf(floor, nameOf);
  return of !== undefined && floored === `floor((abs(${of}) + 0.5))` ? `round(${of})` : undefined;
}

/** A number of the standard as a formula reads it. */
export function numberOf(text: string): string | undefined {
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value)) return undefined;
  return value < 0 ? `(${value})` : String(value);
}
