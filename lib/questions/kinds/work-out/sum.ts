import type { Unit } from '../../../units';
import type { NumberKey, NumberPart, Slip } from '../../answer';
import type { DrawnBody } from '../../kind';
import type { Line, Value } from '../../line';

/** A number to be worked out, with its key. */
export type Sum = NumberPart & NumberKey;

interface Drawn
  extends Pick<DrawnBody, 'stem' | 'explanation' | 'topics' | 'seconds'>,
    Partial<Pick<DrawnBody, 'figure' | 'cautions'>> {
  sums: readonly Sum[];
  /** Beside the number of parts, which is counted. */
  features?: Readonly<Record<string, number>>;
}

/** A question that is answered by numbers. */
export function sumsBody({ sums, features, ...rest }: Drawn): DrawnBody {
  return {
    ...rest,
    answer: { form: 'numbers', parts: sums.map(({ id, line, units }) => ({ id, line, units })) },
    key: {
      form: 'numbers',
      parts: Object.fromEntries(
        sums.map(({ id, value, tolerance, slips, follows }) => [
          id,
          { value, tolerance, slips, ...(follows && { follows }) },
        ]),
      ),
    },
    features: { parts: sums.length, ...features },
    // Nobody hits upon a number.
    guessFloor: 0,
    // A part that follows from a wrong one earns less than its share.
    steps: sums.length === 1 ? 1 : 2 * sums.length,
  };
}

/** Whether every slip lies clear of its key, so that no wrong number can pass for the right one. */
export function isClear({ key }: Pick<DrawnBody, 'key'>): boolean {
  if (key.form !== 'numbers') return true;
  return Object.values(key.parts).every(
    ({ value, tolerance, slips }) =>
      Number.isFinite(value) && slips.every((slip) => Math.abs(slip.value - value) > 2.2 * tolerance),
  );
}

/** What stands on paper: later steps reckon with it, as somebody does who reads the question. */
export function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}

/** To the nearest mark of an instrument. */
export function toStep(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toPrecision(12));
}

export function slip(say: string, value: number): Slip {
  return { value, line: { say: `slip-${say}` } };
}

export function amount(quantity: number, unit: Unit, decimals: number): Value {
  return { quantity, unit, decimals };
}

export function bare(number: number, decimals: number): Value {
  return { number, decimals };
}

export function say(code: string, values?: Readonly<Record<string, Value>>): Line {
  return values ? { say: code, with: values } : { say: code };
}

/** Those of the values that a line prints: a stem holds nothing from which the key could be read. */
export function only<T extends object, Name extends keyof T>(values: T, ...names: readonly Name[]): Pick<T, Name> {
  return Object.fromEntries(names.map((name) => [name, values[name]])) as Pick<T, Name>;
}
