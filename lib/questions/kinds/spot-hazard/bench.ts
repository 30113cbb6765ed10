import type { Catalogue } from '../../../catalogue';
import type { SteadyConditionId } from '../../../rig/condition';
import { elementOfKind } from '../../../rig/rig';
import { valueAt } from '../../../rig/traces/trace';
import { fromSi, type Pascal } from '../../../units';
import type { Value } from '../../line';
import type { RigDay } from '../../shared/rig-day';

/** What is being done in the bay: a gauge on a running engine, a gauge while the lift pump primes, a nut being opened. */
export const jobs = ['run', 'prime', 'open'] as const;
export type Job = (typeof jobs)[number];

/** A rig in the bay with somebody at work on it. */
export interface Bench {
  day: RigDay;
  job: Job;
  condition: SteadyConditionId;
  /** Where the work is: a port's id and its node. */
  port: string;
  node: string;
  /** Since the engine was stopped, where a nut is opened. */
  secondsOff: number;
  catalogue: Pick<Catalogue, 'gauges' | 'checks'>;
}

/** Conditions that an engine may get into once somebody cranks it. */
export const TURNING: readonly SteadyConditionId[] = ['cranking', 'idle', 'high-idle', 'full-load'];

/** Gauge pressure at a node. */
export function pressureAt({ points }: RigDay, node: string, condition: SteadyConditionId): Pascal {
  const { pressures, values } = points[condition];
  return (pressures[node] ?? 0) - (values.ambientPressure ?? 0);
}

/** The most that a node may see from a condition on, somebody at the key or the engine running. */
export function mostAt(day: RigDay, node: string, condition: SteadyConditionId, mayTurn: boolean): Pascal {
  const conditions = mayTurn ? [condition, ...TURNING] : [condition];
  return Math.max(...conditions.map((one) => pressureAt(day, node, one)));
}

/** What the rail holds now: what is left of it some seconds after the engine was stopped from idle. */
export function railPressure({ day, job, condition, secondsOff }: Bench): Pascal {
  if (job !== 'open') return day.points[condition].values.trueRailPressure ?? 0;
  const { stopSeconds, seconds } = day.rig.traces.decay;
  const atRest = day.points['key-off'].values.trueRailPressure ?? 0;
  const [line] = day.traces.get('decay').lines;
  return Math.max(0, line && secondsOff <= seconds ? valueAt(line, stopSeconds + secondsOff) : atRest);
}

export function returnTemperature({ day, condition }: Bench): number {
  const { to } = elementOfKind(day.rig, 'injector-return');
  return day.points[condition].temperatures[to] ?? day.setting.airTemperature;
}

/** Rounded as somebody says it: kilopascals to ten below a megapascal and more, megapascals to a tenth. */
export function said(pressure: Pascal): Value {
  const kpa = fromSi(pressure, 'kPa');
  if (kpa >= 2000) return { quantity: fromSi(pressure, 'MPa'), unit: 'MPa', decimals: 1 };
  return { quantity: Math.round(kpa / 10) * 10, unit: 'kPa', decimals: 0 };
}

export function saidTemperature(kelvin: number): Value {
  return { quantity: Math.round(fromSi(kelvin, '°C')), unit: '°C', decimals: 0 };
}
