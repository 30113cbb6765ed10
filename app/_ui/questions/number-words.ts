import type { Unit } from '@/lib/units';
import { withUnit } from '../show-quantity';

/** How a unit stands beside a field; nothing for plain numbers. */
export function unitName(unit: Unit): string {
  return withUnit('', unit).trim();
}

/** A number as somebody gave it. */
export function givenNumber({ value, unit }: { value: number; unit?: Unit | undefined }): string {
  const text = new Intl.NumberFormat('en', { maximumFractionDigits: 9 }).format(value);
  return unit === undefined ? text : withUnit(text, unit);
}

/** Figures of a tolerance that are printed; the value gets as many decimals. */
const FIGURES = 2;

/** A key and its tolerance, such as “34.5 kPa” and “0.5 kPa”: no finer than the tolerance means anything. */
export function keyNumber({ value, tolerance }: { value: number; tolerance: number }, unit: Unit | undefined) {
  const printed = Number(tolerance.toPrecision(FIGURES));
  const decimals = Math.min(9, printed.toString().includes('e') ? 9 : (printed.toString().split('.')[1]?.length ?? 0));
  const show = (number: number) => {
    const text = new Intl.NumberFormat('en', { maximumFractionDigits: Math.max(decimals, 0) }).format(number);
    return unit === undefined ? text : withUnit(text, unit);
  };
  return { value: show(value), tolerance: show(printed) };
}
