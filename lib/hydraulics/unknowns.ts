import type { Network } from './network';
import type { Workspace } from './workspace';

/** Numbers the free nodes, puts the fixed pressures in, and returns how many are free. */
export function numberUnknowns({ nodes, fixed }: Network, work: Workspace, pressures: Float64Array): number {
  const { unknown, nodeOf } = work;
  let size = 0;
  for (let node = 0; node < nodes.length; node++) {
    const pressure = fixed[node];
    if (pressure !== undefined) {
      pressures[node] = pressure;
      unknown[node] = -1;
    } else {
      nodeOf[size] = node;
      unknown[node] = size++;
    }
  }
  return size;
}

/** How far apart two unknowns are numbered at most that a branch joins: the width of the Jacobian's band. */
export function bandOf({ branches }: Network, { unknown }: Workspace): number {
  let widest = 0;
  for (const { from, to } of branches) {
    const one = unknown[from] as number;
    const other = unknown[to] as number;
    if (one >= 0 && other >= 0) widest = Math.max(widest, Math.abs(one - other));
  }
  return widest;
}
