import type { RigElement } from '../rig/element';
import type { Rig } from '../rig/rig';
import type { Setting } from '../rig/setting';
import { ZERO_CELSIUS } from '../units';
import type { Cause, Effect } from './cause';

/** What a cause does to this rig. */
export function effectsOn(rig: Rig, { effects, onRigs }: Pick<Cause, 'effects' | 'onRigs'>): readonly Effect[] {
  return onRigs?.[rig.id] ?? effects;
}

/** Whether a rig has the parts that a cause breaks. */
export function appliesTo(rig: Rig, cause: Pick<Cause, 'effects' | 'onRigs'>): boolean {
  return effectsOn(rig, cause).every(({ element, parameter }) => {
    const found = rig.elements.find(({ id }) => id === element) as Record<string, unknown> | undefined;
    return typeof found?.[parameter] === 'number';
  });
}

/** Whether a cause can befall this rig in this weather. */
export function canHappen(rig: Rig, cause: Cause, { airTemperature }: Setting): boolean {
  const [coldest, warmest] = cause.airC ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const air = airTemperature - ZERO_CELSIUS;
  return appliesTo(rig, cause) && air >= coldest && air <= warmest;
}

/**
 * A rig with one thing wrong with it. Only parameters of elements change; severity 0 gives the healthy rig exactly.
 *
 * @param severity  0…1.
 * @throws RangeError when severity is outside 0…1 or the cause names something the rig does not have.
 */
export function applyCause(rig: Rig, cause: Pick<Cause, 'effects' | 'onRigs'>, severity: number): Rig {
  if (!(severity >= 0 && severity <= 1)) throw new RangeError(`Severity ${severity} lies outside 0…1`);
  return effectsOn(rig, cause).reduce((broken, effect) => applyEffect(broken, effect, severity), rig);
}

function applyEffect(rig: Rig, effect: Effect, severity: number): Rig {
  const index = rig.elements.findIndex(({ id }) => id === effect.element);
  const element = rig.elements[index];
  if (!element) throw new RangeError(`Rig ${rig.id} has no element ${effect.element}`);
  const elements = [...rig.elements];
  elements[index] = changed(element, effect, severity);
  return { ...rig, elements };
}

function changed(element: RigElement, { parameter, by, at1 }: Effect, severity: number): RigElement {
  const healthy = (element as Record<string, unknown>)[parameter];
  if (typeof healthy !== 'number') throw new RangeError(`Element ${element.id} has no parameter ${parameter}`);
  return { ...element, [parameter]: moved(healthy, by, at1, severity) };
}

function moved(healthy: number, by: Effect['by'], at1: number, severity: number): number {
  switch (by) {
    case 'multiply':
      return healthy * (1 + (at1 - 1) * severity);
    case 'scale':
      return healthy * at1 ** severity;
    case 'add':
      return healthy + at1 * severity;
  }
}
