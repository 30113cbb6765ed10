import { dimensionOf, fromSi, toSi, type Unit } from '../../../units';
import type { Line, Value } from '../../line';
import { exact } from '../../shared/exact';
import { limitWords } from '../../shared/limit-words';
import type { Fit } from './assess';
import type { Flawed } from './draw-hooks';
import { gaugeAt, type Hook, type Task } from './hook';

/** An instrument at its ports in a condition. */
export function hookWords(hook: Hook, rig: string): Line {
  return { say: 'hook', with: { gauge: { name: 'gauge', id: hook.instrument.id }, ...placeOf(hook, rig) } };
}

/** What speaks against it, with what was computed. */
export function flawWords(hook: Flawed, { quantity }: Task, rig: string): Line {
  const { flaw, at } = hook;
  const place = placeOf(hook, rig);
  const unit = unitFor(hook);
  switch (flaw.flaw) {
    case 'jet':
      return { say: 'jet', with: { ...place, speed: flaw.speed, pressure: inUnit(flaw.pressure, 'MPa') } };
    case 'destroyed':
    case 'may-catch':
    case 'may-be-destroyed':
      return {
        say: { destroyed: 'destroyed', 'may-catch': 'mayCatch', 'may-be-destroyed': 'mayBeDestroyed' }[flaw.flaw],
        with: { ...place, value: inUnit(flaw.value, unit), times: { number: flaw.times, decimals: 1 } },
      };
    case 'wrong-kind':
      return {
        say: quantity.measures === 'vacuum' ? 'isVacuum' : 'isPressure',
        with: { ...place, value: inUnit(flaw.value, unit) },
      };
    case 'wrong-port':
      return {
        say: 'wrongPort',
        with: {
          ...place,
          quantity: { name: 'check-quantity', id: at.quantity.id, of: at.check.id },
          value: inUnit(flaw.value, unit),
        },
      };
    case 'no-line':
      return { say: 'noLine', with: { ...place, value: inUnit(flaw.value, unit) } };
    case 'short-range': {
      const { range, unit: marked } = gaugeAt(hook);
      const end = flaw.limit > toSi(range.max, marked) ? range.max : range.min;
      return { say: 'shortRange', with: { limit: inUnit(flaw.limit, unit), end: exact(end, marked) } };
    }
    case 'coarse':
      return {
        say: 'coarse',
        with: { value: inUnit(flaw.value, unit), distance: step(flaw.distance, unit), guard: step(flaw.guard, unit) },
      };
  }
}

/** Why nothing speaks against the right one. */
export function fitWords(hook: Hook, { value, most, line, distance, guard }: Fit, rig: string): Line[] {
  const unit = unitFor(hook);
  const { range, unit: marked, overRange } = gaugeAt(hook);
  return [
    {
      say: 'expected',
      with: { ...placeOf(hook, rig), value: inUnit(value, unit), limit: { line: limitWords(line) } },
    },
    {
      say: overRange.kind === 'destroyed' ? 'covers' : 'reaches',
      with: {
        gauge: { name: 'gauge', id: hook.instrument.id },
        end: exact(range.max, marked),
        converted: marked === unit ? 'no' : 'yes',
        same: inUnit(toSi(range.max, marked), unit),
        most: inUnit(most, unit),
      },
    },
    { say: 'fine', with: { distance: step(distance, unit), guard: step(guard, unit) } },
  ];
}

function placeOf({ at, condition }: Hook, rig: string): Record<string, Value> {
  const ports = at.check.ports[rig] ?? [];
  return {
    ports: {
      list: ports.map((port) => ({
        line: { say: 'port', with: { port, place: { name: 'port', id: port, of: rig } } },
      })),
    },
    condition: { name: 'condition', id: condition },
  };
}

/** Pressures in the unit of the limit sheets, whatever stands on the dial. */
function unitFor(hook: Hook): Unit {
  const { unit } = gaugeAt(hook);
  return dimensionOf(unit) === 'pressure' ? 'kPa' : unit;
}

function inUnit(si: number, unit: Unit): Value {
  const quantity = fromSi(si, unit);
  return { quantity: Math.abs(quantity) < DUST ? 0 : quantity, unit };
}

/** What the solver leaves where nothing flows; less than any instrument shows in any of its units. */
const DUST = 1e-3;

/** A difference: without the unit's zero. */
function step(si: number, unit: Unit): Value {
  return { quantity: si / (toSi(1, unit) - toSi(0, unit)), unit };
}
