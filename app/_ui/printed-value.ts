import { dimensionOf, fromSi, toSi, type Unit } from '@/lib/units';
import type { UnitChoice } from './display-choices';
import { displayUnit, showAtResolution } from './show-quantity';

/**
 * A value as its instrument prints it. Thermometers are set to the reader's scale; everything else prints in the unit it
 * was built for.
 *
 * @param resolution  Last digit, in `unit`.
 */
export function printedValue(
  value: number,
  unit: Unit,
  resolution: number,
  choice: UnitChoice,
): { digits: string; unit: Unit } {
  const shownIn = dimensionOf(unit) === 'temperature' ? displayUnit(choice, unit, 0) : unit;
  const converted = shownIn === unit ? value : fromSi(toSi(value, unit), shownIn);
  return { digits: showAtResolution(converted, resolution), unit: shownIn };
}
