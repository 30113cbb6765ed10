import type { Unit } from '../../units';
import type { Value } from '../line';

/** A value of a scale, sheet or display, printed with every digit it has and no more. */
export function exact(quantity: number, unit: Unit): Value {
  return { quantity, unit, decimals: decimalsOf(quantity) };
}

/** The same without its unit. */
export function exactNumber(number: number): Value {
  return { number, decimals: decimalsOf(number) };
}

/** Of a number as it is written, binary dust left out. */
export function decimalsOf(value: number): number {
  return Number(value.toPrecision(9)).toString().split('.')[1]?.length ?? 0;
}
