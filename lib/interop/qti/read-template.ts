import type { Variable } from '../../questions/written/draws';
import { formulaOf, type NameOf } from './read-expression';
import { drawnName } from './read-xhtml';
import { childrenOf, elementChildren, findElement, textOf, type XmlElement } from './read-xml';

/** What the templates of an item draw, and what they make of it. */
export interface Template {
  variables: Variable[];
  formula: string;
  /** Where the key is rounded to so many. */
  decimals?: number;
  /** Numbers were drawn anywhere in a range, for which ours has steps only. */
  coarse: boolean;
}

/** Steps into which a range is divided that has none. */
const STEPS = 100;

/** How the key of an item comes about; undefined where it does so in a way that ours has nothing for. */
export function readTemplate(item: XmlElement): Template | undefined {
  const [processing] = childrenOf(item, 'qti-template-processing');
  if (!processing) return undefined;
  const reading = new Reading();
  for (const step of elementChildren(processing)) if (!reading.takes(step)) return undefined;
  const { key: formula, variables, coarse, decimals } = reading;
  if (formula === undefined) return undefined;
  return { variables, formula, coarse, ...(decimals !== undefined && { decimals }) };
}

class Reading {
  readonly variables: Variable[] = [];
  key: string | undefined;
  decimals: number | undefined;
  coarse = false;
  /** Of each variable, what stands for it in a formula. */
  readonly #formulas = new Map<string, string>();
  readonly #decimals = new Map<string, number>();
  readonly #nameOf: NameOf = (identifier) => this.#formulas.get(identifier);

  /** Whether a step of the processing is one that ours can take too. */
  takes({ name, attributes, children }: XmlElement): boolean {
    const expression = children.find((child) => typeof child !== 'string');
    const { identifier = '' } = attributes;
    if (!expression) return false;
    if (name === 'qti-set-template-value') return this.#takesValue(identifier, expression);
    if (name !== 'qti-set-correct-response') return false;
    const used = expression.attributes.identifier ?? '';
    this.decimals = expression.name === 'qti-variable' ? this.#decimals.get(used) : decimalsOf(expression);
    this.key = formulaOf(unrounded(expression), this.#nameOf);
    return this.key !== undefined;
  }

  #takesValue(identifier: string, expression: XmlElement): boolean {
    const decimals = decimalsOf(expression);
    if (decimals !== undefined) this.#decimals.set(identifier, decimals);
    const drawn = drawnBy(unrounded(expression));
    if (drawn) {
      const name = drawnName(identifier);
      this.variables.push({ name, ...drawn.range });
      this.coarse ||= drawn.coarse;
      this.#formulas.set(identifier, name);
      return true;
    }
    const formula = formulaOf(unrounded(expression), this.#nameOf);
    if (formula !== undefined) this.#formulas.set(identifier, formula);
    return formula !== undefined;
  }
}

/** To how many decimals an expression is rounded; undefined where it is not, or in another way. */
function decimalsOf({ name, attributes }: XmlElement): number | undefined {
  const figures = Number(attributes.figures);
  const rounds = name === 'qti-round-to' && attributes['rounding-mode'] === 'decimalPlaces';
  return rounds && Number.isInteger(figures) && figures >= 0 && figures <= 6 ? figures : undefined;
}

function unrounded(expression: XmlElement): XmlElement {
  const [inner] = expression.name === 'qti-round-to' ? elementChildren(expression) : [];
  return inner ?? expression;
}

interface Drawn {
  range: Omit<Variable, 'name'>;
  coarse: boolean;
}

function drawnBy(expression: XmlElement): Drawn | undefined {
  const { name, attributes } = expression;
  const [from, to, step = 1] = [attributes.min, attributes.max, attributes.step].map((text) =>
    text === undefined ? undefined : Number(text),
  );
  if (name === 'qti-random-integer' && to !== undefined) return checked({ from: from ?? 0, to, step });
  if (name === 'qti-random-float' && to !== undefined) {
    const range = { from: from ?? 0, to, step: to > (from ?? 0) ? (to - (from ?? 0)) / STEPS : 1 };
    return checked(range, true);
  }
  return name === 'qti-sum' ? onGrid(expression) : undefined;
}

/** A start and so many steps, as ours are written; see `write-template.ts`. */
function onGrid(sum: XmlElement): Drawn | undefined {
  const [start, product] = elementChildren(sum);
  const random = product?.name === 'qti-product' ? findElement(product, 'qti-random-integer') : undefined;
  const width = product && findElement(product, 'qti-base-value');
  if (start?.name !== 'qti-base-value' || !random || !width || elementChildren(sum).length > 2) return undefined;
  const [from, step] = [Number(textOf(start)), Number(textOf(width))];
  const to = Number((from + step * Number(random.attributes.max)).toPrecision(12));
  return random.attributes.min === '0' ? checked({ from, to, step }) : undefined;
}

function checked(range: Omit<Variable, 'name'>, coarse = false): Drawn | undefined {
  return Object.values(range).every(Number.isFinite) ? { range, coarse } : undefined;
}
