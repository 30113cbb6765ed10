import { type Formula, parseFormula } from '../../questions/written/formula';
import { type Xml, xml } from './xml';

const OPERATIONS = {
  '+': 'qti-sum',
  '-': 'qti-subtract',
  '*': 'qti-product',
  '/': 'qti-divide',
  '^': 'qti-power',
} as const;

/** Functions that the standard has under a name of its own. */
const MATH: Readonly<Record<string, string>> = {
  abs: 'abs',
  ceil: 'ceil',
  floor: 'floor',
  exp: 'exp',
  ln: 'ln',
  log10: 'log',
  sin: 'sin',
  cos: 'cos',
  tan: 'tan',
};

/** A formula in the expressions of the standard; undefined where it has none for something in it. */
export function formulaXml(text: string, variables: readonly string[]): Xml | undefined {
  const read = parseFormula(text, variables);
  return 'formula' in read ? write(read.formula) : undefined;
}

function write(formula: Formula): Xml | undefined {
  switch (formula.is) {
    case 'number':
      return base(formula.value);
    case 'name':
      return nameXml(formula.name);
    case 'negative': {
      const of = write(formula.of);
      return of && xml`<qti-product>${base(-1)}${of}</qti-product>`;
    }
    case 'operation': {
      const [left, right] = [write(formula.left), write(formula.right)];
      return left && right && element(OPERATIONS[formula.operator], [left, right]);
    }
    case 'function':
      return call(formula);
  }
}

function call({ name, given }: Extract<Formula, { is: 'function' }>): Xml | undefined {
  const numbers = given.map(write);
  if (!numbers.every((one) => one !== undefined)) return undefined;
  if (name === 'min' || name === 'max') return element(`qti-${name}`, numbers);
  if (name === 'sqrt') return element('qti-power', [...numbers, base(0.5)]);
  const known = MATH[name];
  // Rounding of the standard takes halves up; ours takes them away from zero.
  return known === undefined ? undefined : xml`<qti-math-operator name="${known}">${numbers}</qti-math-operator>`;
}

function nameXml(name: string): Xml {
  if (name === 'pi' || name === 'e') return xml`<qti-math-constant name="${name}"/>`;
  return xml`<qti-variable identifier="${name}"/>`;
}

function base(value: number): Xml {
  return xml`<qti-base-value base-type="float">${value}</qti-base-value>`;
}

function element(name: string, children: readonly Xml[]): Xml {
  return xml`<${raw(name)}>${children}</${raw(name)}>`;
}

function raw(name: string): Xml {
  return xml([name] as unknown as TemplateStringsArray);
}
