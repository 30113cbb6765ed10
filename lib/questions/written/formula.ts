import { create, type MathNode, parseDependencies } from 'mathjs';
import { type FormulaFault, type NameToken, readTokens } from './formula-tokens';

/**
 * Arithmetic that somebody typed, kept as a tree of our own. mathjs reads it and evaluates nothing: what is not named here
 * has no place in the tree, so that no text can do more than count.
 */
export type Formula =
  | { is: 'number'; value: number }
  | { is: 'name'; name: string }
  | { is: 'negative'; of: Formula }
  | { is: 'operation'; operator: Operator; left: Formula; right: Formula }
  | { is: 'function'; name: FunctionName; given: readonly Formula[] };

const operators = ['+', '-', '*', '/', '^'] as const;
type Operator = (typeof operators)[number];

const one = (of: (x: number) => number) => ({ least: 1, most: 1, of });
const some = (of: (...x: number[]) => number) => ({ least: 1, most: 12, of });

/** What may be called, with how many numbers. Angles are in radians. */
const functions = {
  abs: one(Math.abs),
  ceil: one(Math.ceil),
  floor: one(Math.floor),
  /** Halves away from zero, as one rounds by hand. */
  round: one((x) => Math.sign(x) * Math.round(Math.abs(x))),
  sqrt: one(Math.sqrt),
  exp: one(Math.exp),
  ln: one(Math.log),
  log10: one(Math.log10),
  min: some(Math.min),
  max: some(Math.max),
  sin: one(Math.sin),
  cos: one(Math.cos),
  tan: one(Math.tan),
} as const;

type FunctionName = keyof typeof functions;
export const functionNames = Object.keys(functions) as FunctionName[];

const constants: Readonly<Record<string, number>> = { pi: Math.PI, e: Math.E };

/** Names that no variable may have. */
export const takenNames: readonly string[] = [...functionNames, ...Object.keys(constants)];

/** Knows how to read and next to nothing else. Its types make it out to be possibly missing. */
const reader = create(parseDependencies ?? {}, {});

/**
 * Reads a formula of the variables named.
 *
 * @returns what is wrong with it, and where, for what is more than arithmetic.
 */
export function parseFormula(text: string, variables: readonly string[]): { formula: Formula } | FormulaFault {
  const tokens = readTokens(text);
  if ('fault' in tokens) return tokens;
  try {
    const node = reader.parse(tokens.plain);
    return { formula: kept(node, { variables, names: [...tokens.names] }) };
  } catch (thrown) {
    if (thrown instanceof Refused) return thrown.because;
    // The reader counts from 1 and may stop behind the end.
    if (thrown instanceof SyntaxError) return { fault: 'syntax', at: Math.min(charOf(thrown), text.length + 1) };
    throw thrown;
  }
}

/** The value for these variables; undefined where it, or anything on the way to it, is no finite number. */
export function evaluateFormula(formula: Formula, values: Readonly<Record<string, number>>): number | undefined {
  const value = worthOf(formula, values);
  return Number.isFinite(value) ? value : undefined;
}

/** NaN as soon as a step is no finite number, so that nothing divided by nothing comes back as a number. */
function worthOf(formula: Formula, values: Readonly<Record<string, number>>): number {
  const value = step(formula, values);
  return Number.isFinite(value) ? value : Number.NaN;
}

function step(formula: Formula, values: Readonly<Record<string, number>>): number {
  switch (formula.is) {
    case 'number':
      return formula.value;
    case 'name':
      return (Object.hasOwn(values, formula.name) ? values[formula.name] : constants[formula.name]) ?? Number.NaN;
    case 'negative':
      return -worthOf(formula.of, values);
    case 'operation':
      return operate(formula.operator, worthOf(formula.left, values), worthOf(formula.right, values));
    case 'function': {
      const given = formula.given.map((one) => worthOf(one, values));
      // Some functions make a number of what is none.
      return given.some(Number.isNaN) ? Number.NaN : (functions[formula.name].of as typeof Math.max)(...given);
    }
  }
}

function operate(operator: Operator, left: number, right: number): number {
  switch (operator) {
    case '+':
      return left + right;
    case '-':
      return left - right;
    case '*':
      return left * right;
    case '/':
      return left / right;
    case '^':
      // Anything to the power of zero would be one.
      return Number.isNaN(left) ? Number.NaN : left ** right;
  }
}

class Refused extends Error {
  constructor(readonly because: FormulaFault) {
    super(because.fault);
  }
}

interface Reading {
  variables: readonly string[];
  /** Those not met yet: a walk from left to right meets them in the order in which they stand. */
  names: NameToken[];
}

/** The reader's node as one of ours. @throws Refused for every other node. */
function kept(node: MathNode, reading: Reading): Formula {
  const raw = node as unknown as RawNode;
  switch (raw.type) {
    case 'ParenthesisNode':
      return kept(raw.content, reading);
    case 'ConstantNode':
      if (typeof raw.value === 'number' && Number.isFinite(raw.value)) return { is: 'number', value: raw.value };
      throw new Refused({ fault: 'not-arithmetic', at: 1 });
    case 'SymbolNode':
      return keptName(raw.name, reading);
    case 'OperatorNode':
      return keptOperation(raw, reading);
    case 'FunctionNode':
      return keptCall(raw, reading);
    default:
      throw new Refused({ fault: 'not-arithmetic', at: reading.names[0]?.at ?? 1 });
  }
}

/** Nodes that are looked into, as the reader makes them. */
type RawNode =
  | { type: 'ParenthesisNode'; content: MathNode }
  | { type: 'ConstantNode'; value: unknown }
  | { type: 'SymbolNode'; name: string }
  | { type: 'OperatorNode'; op: string; implicit: boolean; args: readonly MathNode[] }
  | { type: 'FunctionNode'; fn: { type: string; name?: string }; args: readonly MathNode[] };

function keptName(name: string, reading: Reading): Formula {
  const at = nextName(name, reading);
  if (reading.variables.includes(name) || Object.hasOwn(constants, name)) return { is: 'name', name };
  throw new Refused({ fault: isFunction(name) ? 'function-alone' : 'unknown-name', at, name });
}

function keptOperation({ op, implicit, args }: Extract<RawNode, { op: string }>, reading: Reading): Formula {
  const [left, right] = args;
  if (implicit) throw new Refused({ fault: 'sign-missing', at: reading.names[0]?.at ?? 1 });
  if (left && !right && op === '-') return { is: 'negative', of: kept(left, reading) };
  if (left && !right && op === '+') return kept(left, reading);
  const operator = operators.find((known) => known === op);
  if (!operator || !left || !right) throw new Refused({ fault: 'not-arithmetic', at: reading.names[0]?.at ?? 1 });
  return { is: 'operation', operator, left: kept(left, reading), right: kept(right, reading) };
}

function keptCall({ fn, args }: Extract<RawNode, { fn: object }>, reading: Reading): Formula {
  const name = fn.type === 'SymbolNode' ? (fn.name ?? '') : '';
  const at = nextName(name, reading);
  if (!isFunction(name)) {
    const isVariable = reading.variables.includes(name) || Object.hasOwn(constants, name);
    throw new Refused({ fault: isVariable ? 'sign-missing' : 'unknown-function', at, name });
  }
  const { least, most } = functions[name];
  if (args.length < least || args.length > most) throw new Refused({ fault: 'how-many-given', at, name });
  return { is: 'function', name, given: args.map((one) => kept(one, reading)) };
}

function nextName(name: string, { names }: Reading): number {
  const next = names.shift();
  if (next?.name !== name) throw new Refused({ fault: 'not-arithmetic', at: next?.at ?? 1 });
  return next.at;
}

function isFunction(name: string): name is FunctionName {
  return Object.hasOwn(functions, name);
}

function charOf(error: SyntaxError): number {
  const { char } = error as SyntaxError & { char?: unknown };
  return typeof char === 'number' ? Math.max(1, char) : 1;
}
