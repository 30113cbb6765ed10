import { describe, expect, test } from 'vitest';
import { gaugeFor } from '@/lib/cases/perform-check';
import type { Check, Quantity } from '@/lib/checks/check';
import { jetFrom } from '@/lib/checks/jet';
import { trueValue } from '@/lib/checks/quantity';
import { appliesTo } from '@/lib/faults/apply-cause';
import type { Gauge } from '@/lib/gauges/gauge';
import { inGaugeUnit, standardUncertainty } from '@/lib/gauges/uncertainty';
import type { ConditionId } from '@/lib/rig/condition';
import type { Rig } from '@/lib/rig/rig';
import type { RigState } from '@/lib/rig/rig-state';
import type { Setting } from '@/lib/rig/setting';
import { canRun } from '@/lib/symptoms/complaint';
import { toSi } from '@/lib/units';
import { catalogue, mildDay, stateWith } from '../support/bench-rig';
import { coldDay } from './direction-columns';

/*
 * Every two causes of a rig, equally severe, are told apart by some reading: the check done as its procedure says, with its
 * own instrument, in a condition that both engines reach. No two are alike; two that hydraulics makes so would be listed
 * here, each with its reason.
 */

/** Severe enough that a driver minds, short of the worst. */
const SEVERITY = 0.8;
/** Readings further apart than so many combined standard uncertainties are told apart beyond chance: twice the k = 2 of GUM 6.3.3. */
const APART = 4;

/** So little that no instrument may make anything of it, nor an eye, to which a joint is damp from half a millilitre a minute. */
const NEXT_TO_NOTHING = 1e-4;

/** One number that a procedure gives. */
interface Place {
  check: Check;
  condition: ConditionId;
  quantity: Quantity;
  gauge: Gauge;
}

/** What the instrument can show, SI or a grade, and how well it is known. */
interface Reading {
  value: number;
  uncertainty: number;
}

/** A rig with one thing wrong with it; a place that it cannot reach, or where a jet would come, has no reading. */
interface Broken {
  cause: string;
  readings: (place: Place) => Reading | undefined;
}

describe.each([...catalogue.rigs.values()].map((rig) => [rig.id, rig] as const))('%s', (_, rig) => {
  test('some reading tells every two causes apart', () => {
    expect(lookAlikes(rig)).toEqual([]);
  });

  test('a cause that has hardly begun looks like none', () => {
    const sound = broken(rig, 'no-fuel-fault', mildDay);
    const begun = causesOf(rig).map((cause) => broken(rig, cause, mildDay, NEXT_TO_NOTHING));
    const places = placesOf(rig);
    const seen = begun.filter((one) => separated(places, sound, one));
    expect(seen.map(({ cause }) => cause)).toEqual([]);
  });
});

function lookAlikes(rig: Rig): string[] {
  const places = placesOf(rig);
  const mild = causesOf(rig).filter((cause) => !onlyInTheCold(cause));
  const brokenOn = (setting: Setting) => (cause: string) => broken(rig, cause, setting);
  const onMildDay = mild.map(brokenOn(mildDay));
  const pairs = onMildDay.flatMap((one, at) => onMildDay.slice(at + 1).map((other) => [one, other] as const));
  for (const waxed of causesOf(rig).filter(onlyInTheCold).map(brokenOn(coldDay)))
    pairs.push(...mild.map(brokenOn(coldDay)).map((other) => [waxed, other] as const));
  return pairs
    .filter(([one, other]) => !separated(places, one, other))
    .map(([one, other]) => `${one.cause} & ${other.cause}`);
}

function causesOf(rig: Rig): string[] {
  return [...catalogue.causes.values()].filter((cause) => appliesTo(rig, cause)).map(({ id }) => id);
}

function onlyInTheCold(cause: string): boolean {
  return catalogue.causes.get(cause)?.airC !== undefined;
}

/** What comes to rest first, as traces take longer to follow. Stored codes are somebody else's reading. */
function placesOf(rig: Rig): Place[] {
  const places = [...catalogue.checks.values()].filter(({ ports }) => ports[rig.id]).flatMap(placesIn);
  const isTrace = ({ quantity }: Place) => Number(quantity.of.kind === 'trace');
  return places.sort((one, other) => isTrace(one) - isTrace(other));
}

function placesIn(check: Check): Place[] {
  const instrument = catalogue.gauges.get(check.instruments[0] ?? '');
  if (!instrument) throw new Error(`${check.id} has no instrument`);
  return check.conditions.flatMap((condition) =>
    check.quantities
      .filter(({ of }) => of.kind !== 'code-count')
      .map((quantity) => ({ check, condition, quantity, gauge: gaugeFor(instrument, quantity) })),
  );
}

function broken(rig: Rig, cause: string, setting: Setting, severity = SEVERITY): Broken {
  const state = stateWith(cause, severity, setting, rig);
  const known = new Map<Place, Reading | undefined>();
  const readings = (place: Place) => {
    if (!known.has(place)) known.set(place, readingAt(state, place));
    return known.get(place);
  };
  return { cause, readings };
}

function readingAt(state: RigState, { check, condition, quantity, gauge }: Place): Reading | undefined {
  if (!canRun(state.points, condition) || jetFrom(state, check, condition)) return undefined;
  const truth = trueValue(state, condition, quantity, 0);
  if (quantity.grades) return { value: truth, uncertainty: 0 };
  // Beyond the end of the scale the end is all that can be read.
  const shown = Math.min(Math.max(inGaugeUnit(gauge, truth), gauge.range.min), gauge.range.max);
  return { value: toSi(shown, gauge.unit), uncertainty: standardUncertainty(gauge, shown) };
}

function separated(places: readonly Place[], one: Broken, other: Broken): boolean {
  return places.some((place) => {
    const [left, right] = [one.readings(place), other.readings(place)];
    if (!left || !right) return false;
    return Math.abs(left.value - right.value) > APART * Math.hypot(left.uncertainty, right.uncertainty);
  });
}
