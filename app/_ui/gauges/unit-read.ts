import type { ShownLine } from '@/lib/checks/shown';
import type { Gauge } from '@/lib/gauges/gauge';
import { dimensionOf, type Unit, unitNames } from '@/lib/units';
import type { UnitChoice } from '../display-choices';
import { chartUnit } from './chart';

/** Units that a shop reads in; the others are for content. */
const SHOP_UNITS: readonly Unit[] = [
  'kPa',
  'MPa',
  'bar',
  'psi',
  'inHg',
  'mL/min',
  'L/min',
  '°C',
  '°F',
  '%',
  's',
  'V',
  'A',
  'Ω',
  'kg/m³',
];

/** Units in which a value may be written down that was read in `unit`: those of the same kind, the one read first. */
export function unitsToEnter(unit: Unit): readonly Unit[] {
  const others = unitNames.filter((name) => SHOP_UNITS.includes(name) && dimensionOf(name) === dimensionOf(unit));
  return [unit, ...others.filter((name) => name !== unit)];
}

/** The unit that stands on the scale: a chart is ruled in the reader's own, any other instrument in its own. */
export function unitRead(gauge: Gauge, lines: readonly ShownLine[], choice: UnitChoice): Unit {
  const ruled = gauge.display === 'trace' && lines.length > 0 && dimensionOf(gauge.unit) === 'pressure';
  return ruled ? chartUnit(lines, choice) : gauge.unit;
}
