import type { OperatingPoint } from '../rig/operating-point';
import type { Quantity } from './check';

/**
 * True value of a check's quantity, SI.
 *
 * @param codeCount  Stored trouble codes, which are not part of one operating point.
 * @throws RangeError when the operating point has no such node, element or value.
 */
export function trueValue(point: OperatingPoint, { of }: Quantity, codeCount: number): number {
  const ambient = known(point.values, 'ambientPressure');
  switch (of.kind) {
    case 'above-ambient':
      return known(point.pressures, of.node) - ambient;
    case 'below-ambient':
      return ambient - known(point.pressures, of.node);
    case 'drop':
      return known(point.pressures, of.from) - known(point.pressures, of.to);
    case 'flow':
      return known(point.flows, of.element);
    case 'value':
      return known(point.values, of.key);
    case 'code-count':
      return codeCount;
  }
}

function known(record: Record<string, number>, key: string): number {
  const value = record[key];
  if (value === undefined) throw new RangeError(`The operating point has no ${key}`);
  return value;
}
