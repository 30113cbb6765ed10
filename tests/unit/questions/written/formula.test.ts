import { describe, expect, test } from 'vitest';
import { evaluateFormula, parseFormula } from '@/lib/questions/written/formula';

function worth(text: string, values: Record<string, number> = {}): number | undefined {
  const parsed = parseFormula(text, Object.keys(values));
  if ('fault' in parsed) throw new Error(`${parsed.fault} at ${parsed.at}`);
  return evaluateFormula(parsed.formula, values);
}

const NAMES = ['p', 'q', 'x', 'a'];

function faultOf(text: string) {
  const parsed = parseFormula(text, NAMES);
  return 'fault' in parsed ? parsed : 'taken';
}

describe('a formula is worth what a pocket calculator says', () => {
  // Powers bind tighter than signs and from the right: ISO 80000-2 (2019), clause 2-9; worked by hand.
  test.each([
    ['1 + 2 * 3', 7],
    ['(1 + 2) * 3', 9],
    ['10 - 4 - 3', 3],
    ['100 / 10 / 5', 2],
    ['-2 ^ 2', -4],
    ['2 ^ 3 ^ 2', 512],
    ['2 ^ -1', 0.5],
    ['+5 - -5', 10],
    ['1.5e3 + .5', 1500.5],
    ['sqrt(2) * sqrt(2)', 2],
    ['round(2.5) + round(-2.5)', 0],
    ['floor(-1.5) + ceil(1.2) + abs(-3)', 3],
    ['min(4, 2, 8) + max(1)', 3],
    ['ln(e) + log10(1000)', 4],
    ['exp(0) + cos(0) + sin(0) + tan(0)', 2],
    ['sin(pi / 6)', 0.5],
    ['3 × 4 ÷ 2 − 1 · 2', 4],
  ])('%s is %d', (text, value) => {
    expect(worth(text)).toBeCloseTo(value, 12);
  });

  test('of named variables', () => {
    expect(worth('(p - q) / 6.894757', { p: 344.7, q: 68.9 })).toBeCloseTo(40.0, 1);
    expect(worth('X1 + x1', { X1: 1, x1: 10 })).toBe(11);
  });
});

describe('where a step is no finite number, there is no value', () => {
  test.each([
    '1 / 0',
    '0 / 0',
    '1 / (1 / 0)',
    '9^9^9^9',
    '0 * 9^9^9',
    '(0/0)^0',
    'sqrt(-1)',
    '(-8)^(1/3)',
    'ln(0)',
    '1e999',
    'min(1, 1/0)',
    'tan(exp(1000))',
  ])('%s', (text) => {
    const parsed = parseFormula(text, []);
    if ('fault' in parsed) expect(parsed.fault).toBe('not-arithmetic');
    else expect(evaluateFormula(parsed.formula, {})).toBeUndefined();
  });
});

describe('what is more than arithmetic is refused, and told where', () => {
  test.each([
    ['cos.constructor("return process")()', 'not-allowed', 4],
    ['import({ a: 1 })', 'not-allowed', 8],
    ['import(1)', 'unknown-function', 1],
    ['evaluate(1)', 'unknown-function', 1],
    ['1 + parse(1)', 'unknown-function', 5],
    ['simplify(1)', 'unknown-function', 1],
    ['derivative(x, x)', 'unknown-function', 1],
    ['resolve(x)', 'unknown-function', 1],
    ['compile(1)', 'unknown-function', 1],
    ['createUnit(x)', 'unknown-function', 1],
    ['constructor(1)', 'unknown-function', 1],
    ['toString(1)', 'unknown-function', 1],
    ['__proto__', 'not-allowed', 1],
    ['hasOwnProperty', 'unknown-name', 1],
    ['constructor', 'unknown-name', 1],
    ['valueOf + 1', 'unknown-name', 1],
    ['x = 1', 'not-allowed', 3],
    ['f(x) = x', 'not-allowed', 6],
    ['x.y', 'not-allowed', 2],
    ['x["y"]', 'not-allowed', 2],
    ['"text"', 'not-allowed', 1],
    ["'text'", 'not-allowed', 1],
    ['[1, 2]', 'not-allowed', 1],
    ['{a: 1}', 'not-allowed', 1],
    ['1:3', 'not-allowed', 2],
    ['1; 2', 'not-allowed', 2],
    ['1\n2', 'not-allowed', 2],
    ['x ? 1 : 2', 'not-allowed', 3],
    ['1 < 2', 'not-allowed', 3],
    ['3!', 'not-allowed', 2],
    ['5 % 2', 'not-allowed', 3],
    ["x'", 'not-allowed', 2],
    ['x.^2', 'not-allowed', 2],
    ['1 # then', 'not-allowed', 3],
    ['p and q', 'not-arithmetic', 1],
    ['5 mod 2', 'not-arithmetic', 3],
    ['x to a', 'not-arithmetic', 1],
    ['not x', 'not-arithmetic', 1],
    ['true', 'not-arithmetic', 1],
    ['null', 'not-arithmetic', 1],
    ['i', 'unknown-name', 1],
    ['sqrt(x) * i', 'unknown-name', 11],
    ['3i', 'number', 1],
    ['0x1F', 'number', 1],
    ['1.2.3', 'number', 1],
    ['2 p', 'sign-missing', 3],
    ['2(p)', 'sign-missing', 3],
    ['p(2)', 'sign-missing', 1],
    ['(p)(q)', 'sign-missing', 2],
    ['p + unknown * 2', 'unknown-name', 5],
    ['sin + 1', 'function-alone', 1],
    ['sqrt()', 'how-many-given', 1],
    ['1 + sqrt(1, 2)', 'how-many-given', 5],
    ['1 +', 'syntax', 4],
    ['* 2', 'syntax', 1],
    ['(1', 'brackets', 2],
    ['1)', 'brackets', 2],
    ['', 'empty', 1],
    ['  ', 'empty', 1],
    ['`1`', 'not-allowed', 1],
    ['p\u0000', 'not-allowed', 2],
    ['ｐ', 'not-allowed', 1],
  ])('%s', (text, fault, at) => {
    expect(faultOf(text)).toMatchObject({ fault, at });
  });

  test('deep and long ones are refused before they are read', () => {
    expect(faultOf(`${'('.repeat(10_000)}1${')'.repeat(10_000)}`)).toMatchObject({ fault: 'too-deep', at: 21 });
    expect(faultOf(`${'abs('.repeat(30)}1${')'.repeat(30)}`)).toMatchObject({ fault: 'too-deep' });
    expect(faultOf(Array(10_000).fill('1').join('+'))).toMatchObject({ fault: 'too-long', at: 201 });
    expect(faultOf(`${'-'.repeat(199)}1`)).toBe('taken');
    expect(faultOf(Array(100).fill('1').join('^'))).toBe('taken');
  });
});
