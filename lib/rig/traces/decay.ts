import { followTransient } from '../../hydraulics/transient';
import { comeToRest } from '../operating-point';
import { rebound, type Scene, timeToFall } from './manoeuvre';
import { railWatch } from './rail-watch';
import { storesOf } from './stores';
import type { Trace } from './trace';

/** Key-off from idle: injection stops, the engine runs down, the rail bleeds through whatever leaks. */
export function decayTrace(scene: Scene): Trace {
  const { rig, setting, fuel } = scene;
  const { seconds, stopSeconds } = rig.traces.decay;
  const { bound, solution, assumed } = comeToRest(rig, setting, fuel, 'idle');
  const off = { injectedMm3PerShot: 0, railCommandMpa: 0, liftPumpVolts: 0 };
  const running = rebound(scene, 'idle', assumed, off);
  const stopped = rebound(scene, 'idle', assumed, { ...off, engineRpm: 0 });
  const rail = railWatch(rig, bound);
  const moments = followTransient(
    (time) => (time < stopSeconds ? running.network : stopped.network),
    {
      stores: storesOf(rig, bound, 0),
      start: solution.pressures,
      until: stopSeconds + seconds,
      breaks: [stopSeconds],
    },
    ({ time, pressures }) => ({
      time,
      value: rail.sensed(pressures),
    }),
  );
  const times = moments.map(({ time }) => time);
  const values = moments.map(({ value }) => value);
  return {
    id: 'decay',
    lines: [{ id: 'sensed-rail-pressure', times, values }],
    features: { secondsToHalf: timeToFall(times, values, (values[0] ?? 0) / 2) },
  };
}
