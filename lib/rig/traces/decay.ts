import { followTransient } from '../../hydraulics/transient';
import { comeToRest } from '../operating-point';
import { elementOfKind } from '../rig';
import { sensedPressure } from '../sensor-line';
import { rebound, type Scene, timeToFall } from './manoeuvre';
import { nodeOf, storesOf } from './stores';
import type { Trace } from './trace';

/** Key-off from idle: injection stops, the engine runs down, the rail bleeds through whatever leaks. */
export function decayTrace(scene: Scene): Trace {
  const { rig, setting, fuel } = scene;
  const { seconds, stopSeconds } = rig.traces.decay;
  const { bound, solution, assumed } = comeToRest(rig, setting, fuel, 'idle');
  const { ambient, sensor } = bound.surroundings;
  const off = { injectedMm3PerShot: 0, railCommandMpa: 0, liftPumpVolts: 0 };
  const running = rebound(scene, 'idle', assumed, off);
  const stopped = rebound(scene, 'idle', assumed, { ...off, engineRpm: 0 });
  const node = nodeOf(bound, elementOfKind(rig, 'rail').node);
  const fullScale = elementOfKind(rig, 'rail-sensor').fullScaleMpa * 1e6;
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
      value: sensedPressure(sensor, (pressures[node] as number) - ambient, fullScale),
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
