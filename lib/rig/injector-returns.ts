import type { Rested } from './operating-point';
import { elementOfKind, type Rig } from './rig';
import type { Setting } from './setting';
import type { NamedState } from './values';

/**
 * What each cylinder's injector sends back, as `injectorReturn1`, `injectorReturn2`, …, m³/s: all alike but for what one
 * worn injector adds to its own, its part of the leakage through the clearances.
 */
export function returnsByCylinder(
  rig: Rig,
  { cylinder }: Setting,
  { bound: { fluids } }: Rested,
  { flows, pressures }: NamedState,
) {
  const { id, from, to, oneClearanceUm3, cylinders } = elementOfKind(rig, 'injector-return');
  const drop = (pressures[from] ?? 0) - (pressures[to] ?? 0);
  const extra = (oneClearanceUm3 * 1e-18 * drop) / fluids.high.viscosity;
  const each = ((flows[id] ?? 0) - extra) / cylinders;
  const names = Array.from({ length: cylinders }, (_, index) => index + 1);
  return Object.fromEntries(names.map((n) => [`injectorReturn${n}`, each + (n === cylinder ? extra : 0)]));
}
