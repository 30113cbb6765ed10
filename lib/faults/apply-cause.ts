import type { RigElement } from '../rig/element';
import type { Rig } from '../rig/rig';
import type { Cause, Effect } from './cause';

/**
 * A rig with one thing wrong with it. Only parameters of elements change; severity 0 gives the healthy rig exactly.
 *
 * @param severity  0…1.
 * @throws RangeError when severity is outside 0…1 or the cause names something the rig does not have.
 */
export function applyCause(rig: Rig, { effects }: Pick<Cause, 'effects'>, severity: number): Rig {
  if (!(severity >= 0 && severity <= 1)) throw new RangeError(`Severity ${severity} lies outside 0…1`);
  return effects.reduce((broken, effect) => applyEffect(broken, effect, severity), rig);
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
