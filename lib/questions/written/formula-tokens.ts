/** What is wrong with a formula, and at which character, counted from 1. */
export interface FormulaFault {
  fault:
    | 'empty'
    | 'too-long'
    | 'too-deep'
    | 'not-allowed'
    | 'number'
    | 'brackets'
    | 'syntax'
    | 'not-arithmetic'
    | 'sign-missing'
    | 'unknown-name'
    | 'unknown-function'
    | 'function-alone'
    | 'how-many-given';
  at: number;
  /** The name, or the sign, that it is about. */
  name?: string;
}

export interface NameToken {
  name: string;
  at: number;
}

export interface Tokens {
  /** The same text, sign for sign, in the signs of a keyboard. */
  plain: string;
  names: readonly NameToken[];
}

/** Signs and names in one formula. */
const MOST_TOKENS = 200;
const MOST_NESTED = 20;

const KEYBOARD: Readonly<Record<string, string>> = { '−': '-', '–': '-', '×': '*', '·': '*', '÷': '/' };
const SPACE = /^[ \t]+/;
const NUMBER = /^(\d+\.?\d*|\.\d+)(e[+-]?\d+)?/i;
const NAME = /^[a-z][a-z0-9_]*/i;
const SIGN = /^[-+*/^(),]/;

/** Takes a formula apart before anything else reads it: what arithmetic has no sign for ends here. */
export function readTokens(text: string): Tokens | FormulaFault {
  const plain = text.replace(/[−–×·÷]/g, (sign) => KEYBOARD[sign] ?? sign);
  const names: NameToken[] = [];
  let [at, count, open] = [0, 0, 0];
  while (at < plain.length) {
    const rest = plain.slice(at);
    const space = SPACE.exec(rest)?.[0];
    if (space) {
      at += space.length;
      continue;
    }
    const token = (NUMBER.exec(rest) ?? NAME.exec(rest) ?? SIGN.exec(rest))?.[0];
    if (!token) return { fault: 'not-allowed', at: at + 1, name: [...text.slice(at)][0] ?? '' };
    if (NUMBER.test(token) && /^[a-z0-9_.]/i.test(rest.slice(token.length))) return { fault: 'number', at: at + 1 };
    if (NAME.test(token)) names.push({ name: token, at: at + 1 });
    if (token === '(') open += 1;
    if (token === ')') open -= 1;
    count += 1;
    if (open < 0) return { fault: 'brackets', at: at + 1 };
    if (open > MOST_NESTED) return { fault: 'too-deep', at: at + 1 };
    if (count > MOST_TOKENS) return { fault: 'too-long', at: at + 1 };
    at += token.length;
  }
  if (open > 0) return { fault: 'brackets', at: plain.length };
  return count === 0 ? { fault: 'empty', at: 1 } : { plain, names };
}
