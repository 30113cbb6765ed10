import { gaugeFor } from '../../../cases/perform-check';
import type { Catalogue } from '../../../catalogue';
import type { Check, Quantity } from '../../../checks/check';
import { trueValue } from '../../../checks/quantity';
import type { Gauge } from '../../../gauges/gauge';
import { inGaugeUnit, standardUncertainty } from '../../../gauges/uncertainty';
import { type SteadyConditionId, steadyConditionIds } from '../../../rig/condition';
import { canRun } from '../../../symptoms/complaint';
import { brokenOn, type Fault } from '../../shared/broken-day';
import { checksOn } from '../../shared/checks-on';
import { isNumber } from '../../shared/limited';
import type { RigDay } from '../../shared/rig-day';

/** One quantity of a check in one condition. */
export interface Look {
  check: Check;
  condition: SteadyConditionId;
  quantity: Quantity;
}

export const directions = ['rises', 'falls', 'stays'] as const;
export type Direction = (typeof directions)[number];

/** What a fault does to a reading. */
export interface Change {
  /** In whose unit the numbers are. */
  gauge: Gauge;
  before: number;
  after: number;
  /** A greater change is plain to see. */
  plain: number;
  /** A smaller one is none. */
  none: number;
  /** Undefined where the instrument leaves it open. */
  direction: Direction | undefined;
}

/** The engine does not run where the reading would be taken. */
export const NO_READING = 'no-reading';

/** Undefined where no instrument of the procedure shows both, with the fault and without. */
export type Effect = Change | typeof NO_READING | undefined;

/** A change of more standard uncertainties than this is plain to see. */
export const PLAIN = 2.5;
/** Nobody calls a change of a smaller share of the reading one, however fine the instrument. Assumed. */
export const PLAIN_SHARE = 0.03;
/** A change of fewer standard uncertainties is none. */
export const NONE = 0.5;

const looks = new WeakMap<RigDay, readonly Look[]>();
const effects = new WeakMap<RigDay, Map<string, readonly Effect[]>>();

/** Everything with a number that can be read at rest on the sound rig, as the procedures call for it. */
export function looksOn(day: RigDay, catalogue: Catalogue): readonly Look[] {
  const known = looks.get(day) ?? findLooks(day, catalogue);
  looks.set(day, known);
  return known;
}

function findLooks({ rig, points }: RigDay, catalogue: Catalogue): Look[] {
  return checksOn(rig, catalogue).flatMap((check) =>
    check.quantities
      .filter(isNumber)
      .flatMap((quantity) =>
        steadyConditionIds
          .filter((condition) => check.conditions.includes(condition) && canRun(points, condition))
          .map((condition) => ({ check, condition, quantity })),
      ),
  );
}

/** What a fault does to each of the looks, in their order. */
export function effectsOf(day: RigDay, fault: Fault, catalogue: Catalogue): readonly Effect[] {
  const known = effects.get(day) ?? new Map<string, readonly Effect[]>();
  effects.set(day, known);
  const name = `${fault.cause.id} ${fault.severity}`;
  const found = known.get(name) ?? looksOn(day, catalogue).map((look) => changeOf(day, look, fault, catalogue));
  known.set(name, found);
  return found;
}

function changeOf(day: RigDay, { check, condition, quantity }: Look, fault: Fault, { gauges }: Catalogue): Effect {
  const broken = brokenOn(day, fault);
  if (!canRun(broken.points, condition)) return NO_READING;
  const [from, to] = [day, broken].map((state) => trueValue(state, condition, quantity, 0)) as [number, number];
  for (const id of check.instruments) {
    const instrument = gauges.get(id);
    const change = instrument && changeOn(gaugeFor(instrument, quantity), from, to);
    if (change) return change;
  }
  return undefined;
}

/** Undefined where one of the two lies off the scale. */
function changeOn(gauge: Gauge, from: number, to: number): Change | undefined {
  const [before, after] = [inGaugeUnit(gauge, from), inGaugeUnit(gauge, to)];
  const { min, max } = gauge.range;
  if (!(Math.min(before, after) >= min && Math.max(before, after) <= max)) return undefined;
  const inSi = Math.hypot(standardUncertainty(gauge, before), standardUncertainty(gauge, after));
  const uncertainty = inSi * (inGaugeUnit(gauge, 1) - inGaugeUnit(gauge, 0));
  const plain = Math.max(PLAIN * uncertainty, PLAIN_SHARE * Math.max(Math.abs(before), Math.abs(after)));
  const none = NONE * uncertainty;
  return { gauge, before, after, plain, none, direction: directionOf(after - before, plain, none) };
}

function directionOf(difference: number, plain: number, none: number): Direction | undefined {
  if (Math.abs(difference) > plain) return difference > 0 ? 'rises' : 'falls';
  return Math.abs(difference) < none || difference === 0 ? 'stays' : undefined;
}
