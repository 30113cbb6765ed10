import type { OperatingPoint, Rested } from './operating-point';
import { elementOfKind, type Rig } from './rig';
import type { Setting } from './setting';

/**
 * Adds what each cylinder's injector sends back, as `injectorReturn1`, `injectorReturn2`, …, m³/s: all alike but for what one
 * worn injector adds to its own, its part of the leakage through the clearances.
 */
export function addReturnsByCylinder(
  rig: Rig,
  { cylinder }: Setting,
  { bound: { fluids } }: Rested,
  { flows, pressures, values }: OperatingPoint,
): void {
  const { id, from, to, oneClearanceUm3, cylinders } = elementOfKind(rig, 'injector-return');
  const drop = (pressures[from] ?? 0) - (pressures[to] ?? 0);
  const extra = (oneClearanceUm3 * 1e-18 * drop) / fluids.high.viscosity;
  const each = ((flows[id] ?? 0) - extra) / cylinders;
  for (let n = 1; n <= cylinders; n++) values[`injectorReturn${n}`] = each + (n === cylinder ? extra : 0);
}
