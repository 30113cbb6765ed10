import type { Catalogue } from '../../../catalogue';
import { jetFrom } from '../../../checks/jet';
import { findLimit, limitBounds } from '../../../checks/limit';
import { isLowRange } from '../../../checks/low-range';
import { GUARD } from '../../../checks/verdict';
import type { Gauge } from '../../../gauges/gauge';
import { accuracyLimit, inGaugeUnit, readability, standardUncertainty } from '../../../gauges/uncertainty';
import { type SteadyConditionId, steadyConditionIds } from '../../../rig/condition';
import type { LimitLine } from '../../../rig/rig';
import { toSi } from '../../../units';
import { gaugeAt, type Hook, type Task, valueAt } from './hook';
import type { WhichToolRanges } from './ranges';
import { mostReckoned } from './reckoned';

/** What speaks against a hook-up, worst first, with what was computed. Values in SI. */
export type Flaw =
  | { flaw: 'jet'; speed: number; pressure: number }
  | { flaw: 'destroyed' | 'may-catch' | 'may-be-destroyed'; value: number; times: number }
  | { flaw: 'wrong-kind' | 'wrong-port' | 'no-line'; value: number }
  | { flaw: 'short-range'; limit: number }
  | { flaw: 'coarse'; value: number; distance: number; guard: number };

/** What makes a hook-up right: the limit that it tells, and by how much. SI. */
export interface Fit {
  flaw: undefined;
  value: number;
  most: number;
  line: LimitLine;
  distance: number;
  guard: number;
}

export interface Assessing {
  catalogue: Catalogue;
  ranges: WhichToolRanges;
}

/** Undefined where it can be argued about. */
export function assess(task: Task, hook: Hook, assessing: Assessing): Flaw | Fit | undefined {
  const { day, check } = task;
  const value = valueAt(day, hook);
  return (
    dangerOf(task, hook, assessing) ??
    (isWrongKind(hook, value) ? { flaw: 'wrong-kind', value } : undefined) ??
    (hook.at.check !== check ? { flaw: 'wrong-port', value } : undefined) ??
    tells(task, hook, assessing)
  );
}

function dangerOf({ day }: Task, hook: Hook, { catalogue, ranges }: Assessing): Flaw | undefined {
  const { at, condition } = hook;
  const jet = jetFrom(day, at.check, condition);
  if (jet) return { flaw: 'jet', speed: jet.speed, pressure: jet.pressure };
  const gauge = gaugeAt(hook);
  if (at.quantity.of.kind !== 'above-ambient' || gauge.overRange.kind !== 'destroyed') return undefined;
  const most = toSi(gauge.range.max, gauge.unit);
  const against = (flaw: 'destroyed' | 'may-catch' | 'may-be-destroyed', value: number) => ({
    flaw,
    value,
    times: value / most,
  });
  const survived = most * gauge.overRange.ratio;
  const value = valueAt(day, hook);
  if (value > survived) return against('destroyed', value);
  if (isLowRange(hook.instrument, at.check, condition, day.rig, catalogue.checks))
    return against('may-catch', Math.max(...TURNING.map((other) => valueAt(day, { at, condition: other }))));
  const reckoned = mostReckoned(day, hook, catalogue, ranges.reckonedSeverity);
  return reckoned > survived ? against('may-be-destroyed', reckoned) : undefined;
}

const TURNING: readonly SteadyConditionId[] = steadyConditionIds.filter((id) => id !== 'key-on' && id !== 'key-off');

/** A gauge for vacuum where there is pressure, or the other way round: the needle rests on its stop. */
function isWrongKind({ instrument, at }: Hook, value: number): boolean {
  return value > 0 && !instrument.measures.includes(at.quantity.measures);
}

/** Whether it tells a sound rig from its limit, in a condition that has one. */
function tells({ day, check }: Task, hook: Hook, { catalogue, ranges }: Assessing): Flaw | Fit | undefined {
  const value = valueAt(day, hook);
  const line = findLimit(day.rig, check.id, hook.condition, hook.at.quantity.id);
  if (!line || !check.conditions.includes(hook.condition)) return { flaw: 'no-line', value };
  const gauge = gaugeAt(hook);
  if (!hook.instrument.measures.includes(hook.at.quantity.measures)) return undefined;
  const bounds = limitBounds(line);
  const beyond = [bounds.min, bounds.max].find((end) => end !== undefined && !isOn(gauge, end));
  if (beyond !== undefined) return { flaw: 'short-range', limit: beyond };
  const distance = Math.min(
    value - (bounds.min ?? Number.NEGATIVE_INFINITY),
    (bounds.max ?? Number.POSITIVE_INFINITY) - value,
  );
  const { guard, errors } = errorsAt(gauge, value);
  if (distance > 0 && distance <= ranges.coarseWithin * guard) return { flaw: 'coarse', value, distance, guard };
  if (distance < ranges.clearBy * errors || !isOn(gauge, value)) return undefined;
  const most = mostReckoned(day, hook, catalogue, ranges.reckonedSeverity);
  return { flaw: undefined, value, most, line, distance, guard };
}

function isOn({ range, unit }: Gauge, si: number): boolean {
  return si <= toSi(range.max, unit) && si >= toSi(range.min, unit);
}

/** In SI: the guard band, and accuracy and readability one after the other. */
function errorsAt(gauge: Gauge, si: number) {
  const one = toSi(1, gauge.unit) - toSi(0, gauge.unit);
  const reading = inGaugeUnit(gauge, si);
  return {
    guard: GUARD * standardUncertainty(gauge, reading),
    errors: one * (accuracyLimit(gauge, reading) + readability(gauge)),
  };
}
