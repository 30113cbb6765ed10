import { type Formula, parseFormula } from '../../questions/written/formula';
import { Xml, xml } from './xml';

const OPERATIONS = {
  '+': 'qti-sum',
  '-': 'qti-subtract',
  '*': 'qti-product',
  '/': 'qti-divide',
  '^': 'qti-power',
} as const;

/** Functions that the standard has under a name of its own. */
const MATH = {
  abs: 'abs',
  ceil: 'ceil',
  floor: 'floor',
  exp: 'exp',
  ln: 'ln',
  log10: 'log',
  sin: 'sin',
  cos: 'cos',
  tan: 'tan',
} as const;

/** What a variable is called in an item, where it may have the name of nothing else. */
export function variableIdentifier(name: string): string {
  return `N_${name}`;
}

/**
 * A formula in the expressions of the standard, which has one for everything that ours may hold.
 *
 * @throws RangeError for what is no formula of these variables.
 */
export function formulaXml(text: string, variables: readonly string[]): Xml {
  const read = parseFormula(text, variables);
  if ('fault' in read) throw new RangeError(`Not a formula: ${read.fault}`);
  return write(read.formula);
}

function write(formula: Formula): Xml {
  switch (formula.is) {
    case 'number':
      return base(formula.value);
    case 'name':
      return nameXml(formula.name);
    case 'negative':
      return xml`<qti-product>${base(-1)}${write(formula.of)}</qti-product>`;
    case 'operation':
      return element(OPERATIONS[formula.operator], [write(formula.left), write(formula.right)]);
    case 'function':
      return call(formula);
  }
}

function call({ name, given }: Extract<Formula, { is: 'function' }>): Xml {
  const numbers = given.map(write);
  if (name === 'min' || name === 'max') return element(`qti-${name}`, numbers);
  if (name === 'sqrt') return element('qti-power', [...numbers, base(0.5)]);
  return name === 'round' ? rounded(numbers) : math(MATH[name], numbers);
}

/** The standard's own rounding takes halves up; ours takes them away from zero. */
function rounded(number: readonly Xml[]): Xml {
  const half = element('qti-sum', [math('abs', number), base(0.5)]);
  return element('qti-product', [math('signum', number), math('floor', [half])]);
}

function nameXml(name: string): Xml {
  if (name === 'pi' || name === 'e') return xml`<qti-math-constant name="${name}"/>`;
  return xml`<qti-variable identifier="${variableIdentifier(name)}"/>`;
}

function base(value: number): Xml {
  return xml`<qti-base-value base-type="float">${value}</qti-base-value>`;
}

function math(name: string, given: readonly Xml[]): Xml {
  return xml`<qti-math-operator name="${name}">${given}</qti-math-operator>`;
}

function element(name: string, children: readonly Xml[]): Xml {
  const tag = new Xml(name);
  return xml`<${tag}>${children}</${tag}>`;
}
