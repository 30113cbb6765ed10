import { appliesTo, applyCause } from '@/lib/faults/apply-cause';
import type { TraceId } from '@/lib/rig/traces/trace';
import { Traces } from '@/lib/rig/traces/traces';
import { aRig, catalogue, fuelOf, mildDay } from '../support/bench-rig';
import { rounds, type Spread, spreadOf } from './spread';

const ROUNDS = 30;

/** Milliseconds per trace on tern-13: healthy and with every cause it can have, each at severity 0.8. */
export function measureTrace(id: TraceId): Spread {
  const rig = aRig();
  const fuel = fuelOf(mildDay);
  const rigs = [...catalogue.causes.values()]
    .filter((cause) => appliesTo(rig, cause))
    .map((cause) => applyCause(rig, cause, 0.8));
  const times = rounds(ROUNDS, () => {
    for (const broken of rigs) new Traces(broken, mildDay, fuel).get(id);
  });
  return spreadOf(times.map((time) => time / rigs.length));
}
