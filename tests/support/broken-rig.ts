import { applyCause } from '@/lib/faults/apply-cause';
import type { Rig } from '@/lib/rig/rig';
import { causeOf } from './bench-rig';

/** A rig with other parameters in one of its elements; the same rig where it has no such element. */
export function altered(rig: Rig, id: string, change: Record<string, number>): Rig {
  return { ...rig, elements: rig.elements.map((element) => (element.id === id ? { ...element, ...change } : element)) };
}

/** A rig with several things wrong with it, each a cause and its severity, one after the other. */
export function brokenBy(rig: Rig, ...faults: readonly (readonly [cause: string, severity: number])[]): Rig {
  return faults.reduce((found, [cause, severity]) => applyCause(found, causeOf(cause), severity), rig);
}
