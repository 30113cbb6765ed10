import fc from 'fast-check';
import { expect, test } from 'vitest';
import { SolveError } from '@/lib/hydraulics/errors';
import type { Network, Solution } from '@/lib/hydraulics/network';
import { steadyConditionIds } from '@/lib/rig/condition';
import { comeToRest, type Rested } from '@/lib/rig/operating-point';
import { anyBrokenRig, anySetting } from '../support/any-rig';
import { fuelOf } from '../support/bench-rig';

/**
 * Smaller flows are held to what this one would be: a double carries 1e5 Pa to 1e-11 Pa, and the steepest slope here is some
 * 1e-6 m³/s per Pa, so no balance can be told closer than about 3e-17 m³/s.
 */
const NEXT_TO_NOTHING = 3 * (1e-6 / 60);

/** Beyond what cases draw, down to waxed solid at −40 °C, this share of points may have no steady state that we find. */
const MOST_UNSOLVED = 0.005;
const RUNS = 3000;

test('what flows into a node flows out, to one part in a thousand million, on any rig, however broken, anywhere', () => {
  let unsolved = 0;
  fc.assert(
    fc.property(anyBrokenRig, anySetting, fc.constantFrom(...steadyConditionIds), ({ rig }, setting, condition) => {
      const rested = restedOrNot(() => comeToRest(rig, setting, fuelOf(setting), condition));
      if (rested) expect(worstMiss(rested.bound.network, rested.solution)).toBeLessThan(1e-9);
      else unsolved++;
    }),
    { numRuns: RUNS, endOnFailure: true },
  );
  expect(unsolved).toBeLessThan(MOST_UNSOLVED * RUNS);
});

function restedOrNot(run: () => Rested): Rested | undefined {
  try {
    return run();
  } catch (error) {
    if (error instanceof SolveError) return undefined;
    throw error;
  }
}

/** The largest gap between what comes to a free node and what leaves it, as a share of what passes it. */
function worstMiss({ nodes, fixed, branches }: Network, { flows }: Solution): number {
  const [net, passing] = [new Float64Array(nodes.length), new Float64Array(nodes.length)];
  branches.forEach(({ from, to }, branch) => {
    const flow = flows[branch] ?? Number.NaN;
    net[from] = (net[from] ?? 0) - flow;
    net[to] = (net[to] ?? 0) + flow;
    for (const node of [from, to]) passing[node] = (passing[node] ?? 0) + Math.abs(flow) / 2;
  });
  const misses = nodes.map((_node, index) =>
    fixed[index] === undefined
      ? Math.abs(net[index] ?? Number.NaN) / Math.max(passing[index] ?? 0, NEXT_TO_NOTHING)
      : 0,
  );
  return Math.max(...misses);
}
