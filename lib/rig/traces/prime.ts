import { followTransient } from '../../hydraulics/transient';
import { comeToRest } from '../operating-point';
import { voidAfterStanding } from '../standing';
import { rebound, type Scene, timeToReach } from './manoeuvre';
import { nodeOf, storesOf } from './stores';
import { type Trace, valueAt } from './trace';

/** Key-on after standing: the lift pump fills and primes the low-pressure circuit, then stops, and the pressure decays. */
export function primeTrace(scene: Scene): Trace {
  const { rig, setting, fuel } = scene;
  const { onSeconds, offSeconds, primedKpa, heldAfterSeconds } = rig.traces.prime;
  const { bound, assumed } = comeToRest(rig, setting, fuel, 'key-on');
  const off = rebound(scene, 'key-on', assumed, { liftPumpVolts: 0 });
  const node = nodeOf(bound, rig.primingNode);
  const { ambient } = bound.surroundings;
  const moments = followTransient(
    (time) => (time < onSeconds ? bound.network : off.network),
    {
      stores: storesOf(rig, bound, voidAfterStanding(rig, setting)),
      start: bound.start.map(() => ambient),
      until: onSeconds + offSeconds,
      breaks: [onSeconds],
    },
    ({ time, pressures }) => ({ time, value: (pressures[node] as number) - ambient }),
  );
  const times = moments.map(({ time }) => time);
  const values = moments.map(({ value }) => value);
  const line = { id: 'prime-pressure' as const, times, values };
  return {
    id: 'prime',
    lines: [line],
    features: {
      secondsToPrime: Math.min(onSeconds, timeToReach(times, values, primedKpa * 1e3)),
      pressureReached: valueAt(line, onSeconds),
      pressureHeld: valueAt(line, onSeconds + heldAfterSeconds),
    },
  };
}
