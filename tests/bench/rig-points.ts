import { appliesTo, applyCause } from '@/lib/faults/apply-cause';
import { holdPressure } from '@/lib/hydraulics/hold-pressure';
import type { Solution } from '@/lib/hydraulics/network';
import { solve } from '@/lib/hydraulics/solve';
import { type BoundRig, buildNetwork } from '@/lib/rig/build-network';
import { steadyConditionIds } from '@/lib/rig/condition';
import { firstTemperatures } from '@/lib/rig/heat-balance';
import { operatingPoint } from '@/lib/rig/operating-point';
import { aRig, catalogue, fuelOf, mildDay } from '../support/bench-rig';
import { rounds, type Spread, spreadOf, timed } from './spread';

const SEVERITIES = [0, 0.4, 0.8];
const ROUNDS = 150;

export interface RigPointFigures {
  points: number;
  /** Microseconds per operating point, binding of laws, solve, and derived values included. */
  whole: Spread;
  /** Microseconds per solve of a network just bound. */
  solveAlone: Spread;
  /** Microseconds per solve that sets out from its own answer, as the second pass of an operating point nearly does. */
  warm: Spread;
}

/** Every cause at several severities in every condition on tern-13, each from the rig's own cold start. */
export function measureRigPoints(): RigPointFigures {
  const fuel = fuelOf(mildDay);
  const causes = [...catalogue.causes.values()].filter((cause) => appliesTo(aRig(), cause));
  const states = causes.flatMap((cause) =>
    SEVERITIES.flatMap((severity) => {
      const rig = applyCause(aRig(), cause, severity);
      return steadyConditionIds.map((condition) => ({ rig, condition }));
    }),
  );
  const whole = rounds(ROUNDS, () => {
    for (const { rig, condition } of states) operatingPoint(rig, mildDay, fuel, condition);
  });
  const alone = Array.from({ length: ROUNDS }, () => {
    // Bound anew each round: a pipe's law keeps points of its curve once they were needed.
    const bound = states.map(({ rig, condition }) =>
      buildNetwork(rig, mildDay, fuel, condition, firstTemperatures(rig, mildDay, condition)),
    );
    return timed(() => {
      for (const rig of bound) solveBound(rig);
    });
  });
  const known = states.map(({ rig, condition }) => {
    const bound = buildNetwork(rig, mildDay, fuel, condition, firstTemperatures(rig, mildDay, condition));
    return { bound, solution: solveBound(bound) };
  });
  const warm = rounds(ROUNDS, () => {
    for (const { bound, solution } of known) solveBound(bound, solution);
  });
  const each = (times: number[]) => spreadOf(times.map((time) => (time * 1e3) / states.length));
  return { points: states.length, whole: each(whole), solveAlone: each(alone), warm: each(warm) };
}

function solveBound({ network, control, restDemand, start }: BoundRig, from?: Solution): Solution {
  const pressures = from?.pressures ?? start;
  if (control) return holdPressure(network, control, pressures, from?.demand);
  return solve(network, { start: pressures, demand: restDemand });
}
