import type { Pascal } from '../units';
import type { SolveFailure } from './errors';
import type { Network, Solution } from './network';
import { solve, trySolve } from './solve';

/** A controller that opens and shuts the branches answering to demand until a node has its pressure. */
export interface Control {
  node: number;
  target: Pascal;
}

/** Where the search for a demand sets out. */
const FIRST_DEMAND = 0.3;
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
 * @param demand  Where the search sets out: the demand of a nearby point, 0 or 1 where that was saturated.
 * @throws SolveError when even a network at fixed demand has no steady state.
 */
export function holdPressure(
  network: Network,
  control: Control,
  start: Float64Array,
  demand: number = FIRST_DEMAND,
): Solution {
  const still = demand === 0 || demand === 1 ? trySolve(network, { start, demand }) : undefined;
  if (still && isSolution(still) && confirms(still, demand as 0 | 1, control)) return still;
  const held = tryHeld(network, control, start, still ? FIRST_DEMAND : demand);
  if (isWithinReach(held)) return held;
  let from = start;
  for (const end of demandOf(held) < 0 ? ([0, 1] as const) : ([1, 0] as const)) {
    const saturated = trySolve(network, { start, demand: end });
    if (!isSolution(saturated)) continue;
    if (confirms(saturated, end, control)) return saturated;
    from = saturated.pressures;
  }
  // Not saturated after all: the first guess was poor. From a true operating point the rest is usually easy.
  const again = tryHeld(network, control, from, FIRST_DEMAND);
  return isWithinReach(again) ? again : bracketed(network, control, start);
}

/** At demand 1 the pressure must fall short of the target; at demand 0 it must lie beyond. */
function confirms({ pressures }: Solution, end: 0 | 1, { node, target }: Control): boolean {
  const reached = pressures[node] as number;
  return end === 1 ? reached <= target : reached >= target;
}

function bracketed(network: Network, control: Control, start: Float64Array): Solution {
  const shut = atEnd(network, start, 0);
  if (confirms(shut, 0, control)) return shut;
  const open = atEnd(network, start, 1);
  if (confirms(open, 1, control)) return open;
  let [low, high, nearest] = [0, 1, open];
  for (let step = 0; step < BISECTIONS; step++) {
    const middle = (low + high) / 2;
    nearest = solve(network, { start: nearest.pressures, demand: middle });
    if (confirms(nearest, 0, control)) high = middle;
    else low = middle;
  }
  const polished = tryHeld(network, control, nearest.pressures, nearest.demand);
  return isSolution(polished) ? polished : nearest;
}

/** The network at one end of the demand: from the start or, where the way from there goes round in circles, from the other end. */
function atEnd(network: Network, start: Float64Array, demand: 0 | 1): Solution {
  const direct = trySolve(network, { start, demand });
  if (isSolution(direct)) return direct;
  const other = solve(network, { start, demand: 1 - demand });
  return solve(network, { start: other.pressures, demand });
}

function tryHeld(network: Network, { node, target }: Control, start: Float64Array, demand: number) {
  return trySolve(network, { start, demand, held: { node, pressure: target } });
}

function isWithinReach(outcome: Solution | SolveFailure): outcome is Solution {
  return isSolution(outcome) && outcome.demand >= 0 && outcome.demand <= 1;
}

/** Where the search for a demand was heading when it ended. */
function demandOf(outcome: Solution | SolveFailure): number {
  return 'demand' in outcome ? outcome.demand : 1;
}

function isSolution(outcome: Solution | SolveFailure): outcome is Solution {
  return 'pressures' in outcome;
}
