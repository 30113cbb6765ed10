import { fromSi } from '../../units';
import type { Line, Value } from '../line';
import type { RigDay } from './rig-day';

/** Which engine, and the weather of its day: the line `day` of a kind's words. */
export function dayWords({ rig, setting }: RigDay): Line {
  return {
    say: 'day',
    with: {
      rig: { name: 'rig', id: rig.id },
      air: { quantity: Math.round(fromSi(setting.airTemperature, '°C')), unit: '°C', decimals: 0 },
      altitude: { number: setting.altitude, decimals: 0 },
      fuel: { name: 'fuel', id: setting.fuel },
      hours: setting.hoursStanding,
    },
  };
}

/** One quantity of a check in one condition: the line `look` of a kind's words. */
export function lookWords({
  check,
  condition,
  quantity,
}: {
  check: { id: string };
  condition: string;
  quantity: { id: string };
}): Line {
  return {
    say: 'look',
    with: {
      quantity: { name: 'check-quantity', id: quantity.id, of: check.id },
      condition: { name: 'condition', id: condition },
    },
  };
}

/** What an instrument would show, at its resolution. */
export function shownBy(
  { unit, resolution }: { unit: Extract<Value, { quantity: number }>['unit']; resolution: number },
  value: number,
): Value {
  const decimals = Number(resolution.toPrecision(6)).toString().split('.')[1]?.length ?? 0;
  return { quantity: Math.abs(value) < resolution / 2 ? 0 : value, unit, decimals };
}
