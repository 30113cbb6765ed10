import { dimensionOf, fromSi, toSi, type Unit } from '@/lib/units';
import type { UnitChoice } from './display-choices';

/** Rails are spoken of in megapascals; the low-pressure circuit stays in kilopascals, as on the limit sheet. */
const RAIL_PRESSURE = 1e7;

/**
 * The unit in which a reader who made this choice wants to see values of the kind `given` is in.
 *
 * @param largest  Largest magnitude that will be shown beside it, SI: at rail pressures kilopascals turn into megapascals.
 */
export function displayUnit(choice: UnitChoice, given: Unit, largest: number, vacuum = false): Unit {
  switch (dimensionOf(given)) {
    case 'pressure':
      if (choice === 'psi-f') return vacuum ? 'inHg' : 'psi';
      if (choice === 'bar-c') return 'bar';
      return largest >= RAIL_PRESSURE ? 'MPa' : 'kPa';
    case 'temperature':
      return choice === 'psi-f' ? '°F' : '°C';
    case 'flow':
      return 'mL/min';
    case 'fraction':
      return '%';
    default:
      return given;
  }
}

/** Three significant digits, four from a thousand on: as many as a limit sheet prints. */
export function showNumber(value: number): string {
  const digits = Math.abs(value) >= 1000 ? 4 : 3;
  const rounded = Number(value.toPrecision(digits));
  return new Intl.NumberFormat('en', { maximumSignificantDigits: digits }).format(Object.is(rounded, -0) ? 0 : rounded);
}

/** A value as an instrument prints it: every digit its resolution gives. */
export function showAtResolution(value: number, resolution: number): string {
  const digits = decimals(resolution);
  return new Intl.NumberFormat('en', { minimumFractionDigits: digits, maximumFractionDigits: digits }).format(value);
}

function decimals(step: number): number {
  return step.toString().split('.')[1]?.length ?? 0;
}

export function withUnit(text: string, unit: Unit): string {
  if (unit === 'count' || unit === '1') return text;
  return `${text}\u00a0${unit}`;
}

/** An SI value in the reader's unit. */
export function showSi(si: number, given: Unit, choice: UnitChoice, vacuum = false): string {
  const unit = displayUnit(choice, given, Math.abs(si), vacuum);
  return withUnit(showNumber(fromSi(si, unit)), unit);
}

/** A value in the unit it came in, shown in the reader's. */
export function showIn(value: number, given: Unit, choice: UnitChoice, vacuum = false): string {
  return showSi(toSi(value, given), given, choice, vacuum);
}
