import type { Pascal } from '../units';
import { SolveError } from './errors';
import type { Network, Solution } from './network';
import { solve } from './solve';

/** A controller that opens and shuts the branches answering to demand until a node has its pressure. */
export interface Control {
  node: number;
  target: Pascal;
}

/** Bisection halves the demand's bracket this often: to 1e-12 of its range. */
const BISECTIONS = 40;

/**
 * Operating point of a controlled network: the node at its target with the demand that takes, or, where the controller
 * saturates, demand at 0 or 1 and the node where that leaves it.
 *
 * First tries Newton on pressures and demand together. When that runs out of range the controller is saturated, which a
 * solve at that end confirms. Anything else falls back to a bracketed search on the demand: the held pressure only
 * rises with it, so the search always ends.
 *
 * @throws SolveError when even a network at fixed demand has no steady state.
 */
export function holdPressure(network: Network, control: Control, start: Float64Array): Solution {
  const held = tryHeld(network, control, start, 0.3);
  if (held && held.demand >= 0 && held.demand <= 1) return held;
  const end = held && held.demand < 0 ? 0 : 1;
  const saturated = trySolve(network, start, end);
  if (saturated && confirms(saturated, end, control)) return saturated;
  return bracketed(network, control, start);
}

/** At demand 1 the pressure must fall short of the target; at demand 0 it must lie beyond. */
function confirms({ pressures }: Solution, end: 0 | 1, { node, target }: Control): boolean {
  const reached = pressures[node] as number;
  return end === 1 ? reached <= target : reached >= target;
}

function bracketed(network: Network, control: Control, start: Float64Array): Solution {
  const shut = solve(network, { start, demand: 0 });
  if (confirms(shut, 0, control)) return shut;
  const open = solve(network, { start, demand: 1 });
  if (confirms(open, 1, control)) return open;
  let [low, high, nearest] = [0, 1, open];
  for (let step = 0; step < BISECTIONS; step++) {
    const middle = (low + high) / 2;
    nearest = solve(network, { start: nearest.pressures, demand: middle });
    if (confirms(nearest, 0, control)) high = middle;
    else low = middle;
  }
  return tryHeld(network, control, nearest.pressures, nearest.demand) ?? nearest;
}

function tryHeld(network: Network, control: Control, start: Float64Array, demand: number): Solution | undefined {
  const held = { node: control.node, pressure: control.target };
  return unlessUnsolved(() => solve(network, { start, demand, held }));
}

function trySolve(network: Network, start: Float64Array, demand: number): Solution | undefined {
  return unlessUnsolved(() => solve(network, { start, demand }));
}

function unlessUnsolved(attempt: () => Solution): Solution | undefined {
  try {
    return attempt();
  } catch (error) {
    if (error instanceof SolveError) return undefined;
    throw error;
  }
}
