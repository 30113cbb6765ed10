import { type ConditionId, isSteady } from '../rig/condition';
import type { OperatingPoint } from '../rig/operating-point';
import type { RigState } from '../rig/rig-state';
import { fromSi } from '../units';
import type { Quantity } from './check';

/**
 * True value of a check's quantity in one condition, SI; for what is judged by eye, its grade.
 *
 * @param codeCount  Stored trouble codes, which are not part of one operating point.
 * @throws RangeError when the state has no such node, element, value or feature.
 */
export function trueValue(state: RigState, condition: ConditionId, quantity: Quantity, codeCount: number): number {
  const value = valueIn(state, condition, quantity, codeCount);
  return quantity.grades ? gradeOf(value, quantity.grades) : value;
}

/** What an eye makes of a value. */
function gradeOf(value: number, { unit, steps }: NonNullable<Quantity['grades']>): number {
  const inUnit = fromSi(value, unit);
  return steps.find(({ below }) => below === undefined || inUnit < below)?.grade ?? 0;
}

function valueIn(state: RigState, condition: ConditionId, { of }: Quantity, codeCount: number): number {
  if (of.kind === 'trace') return known(state.traces.get(of.trace).features, of.feature);
  if (of.kind === 'code-count') return codeCount;
  if (!isSteady(condition)) throw new RangeError(`Nothing comes to rest at ${condition}`);
  return atRest(state.points[condition], of);
}

function atRest(point: OperatingPoint, of: Exclude<Quantity['of'], { kind: 'trace' | 'code-count' }>): number {
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
    case 'temperature':
      return known(point.temperatures, of.node);
    case 'value':
      return known(point.values, of.key);
  }
}

function known(record: Record<string, number>, key: string): number {
  const value = record[key];
  if (value === undefined) throw new RangeError(`The operating point has no ${key}`);
  return value;
}
