import { gaugeFor } from '../../../cases/perform-check';
import type { Catalogue } from '../../../catalogue';
import type { Check, Quantity } from '../../../checks/check';
import { trueValue } from '../../../checks/quantity';
import type { Gauge } from '../../../gauges/gauge';
import { type SteadyConditionId, steadyConditionIds } from '../../../rig/condition';
import type { RigState } from '../../../rig/rig-state';
import { checksOn } from '../../shared/checks-on';
import { isNumber } from '../../shared/limited';
import type { RigDay } from '../../shared/rig-day';

/** What is to be found out, on which rig and day. */
export interface Task {
  day: RigDay;
  check: Check;
  quantity: Quantity;
}

/** An instrument at the ports of a check, its own or another one's, in a condition. */
export interface Hook {
  instrument: Gauge;
  /** The check whose ports it is at, and what it would read there. */
  at: { check: Check; quantity: Quantity };
  condition: SteadyConditionId;
}

/** Every hook-up that somebody might think of, sensible or not. */
export function hooksFor(task: Task, catalogue: Catalogue): Hook[] {
  const places = placesFor(task, catalogue);
  return instrumentsFor(task, catalogue).flatMap((instrument) =>
    places.flatMap((at) =>
      steadyConditionIds
        .filter((condition) => hasValue(task.day, condition, at.quantity))
        .map((condition) => ({ instrument, at, condition })),
    ),
  );
}

/** The right place, and those of other checks that measure the same kind of thing. */
function placesFor({ day, check, quantity }: Task, catalogue: Catalogue): Hook['at'][] {
  const portsOf = (one: Check) => (one.ports[day.rig.id] ?? []).join(' ');
  const others = checksOn(day.rig, catalogue)
    .filter((other) => portsOf(other) !== portsOf(check))
    .flatMap((other) => {
      const found = other.quantities.find((one) => isNumber(one) && one.measures === quantity.measures);
      return found ? [{ check: other, quantity: found }] : [];
    });
  const first = others.filter(
    (one, index) => others.findIndex((same) => portsOf(same.check) === portsOf(one.check)) === index,
  );
  return [{ check, quantity }, ...first];
}

/** Those of the check, and dials that look alike: the one thing that a vacuum and a pressure have in common. */
function instrumentsFor({ check, quantity }: Task, { gauges }: Catalogue): Gauge[] {
  const own = check.instruments.flatMap((id) => gauges.get(id) ?? []);
  const alike = [...gauges.values()].filter((gauge) => looksAlike(gauge, quantity) && !own.includes(gauge));
  return [...own, ...alike];
}

function looksAlike({ display, measures, range }: Gauge, quantity: Quantity): boolean {
  if (display !== 'dial' || range.min < 0) return false;
  const pressures = measures.includes('gauge-pressure') || measures.includes('vacuum');
  return pressures && (quantity.measures === 'gauge-pressure' || quantity.measures === 'vacuum');
}

/** As it is set to what it would read. */
export function gaugeAt({ instrument, at }: Hook): Gauge {
  return gaugeFor(instrument, at.quantity);
}

/** SI. */
export function valueAt(state: RigState, { at, condition }: Pick<Hook, 'at' | 'condition'>): number {
  return trueValue(state, condition, at.quantity, 0);
}

function hasValue({ points }: RigState, condition: SteadyConditionId, { of }: Quantity): boolean {
  return of.kind !== 'value' || points[condition].values[of.key] !== undefined;
}
