import { followTransient } from '../../hydraulics/transient';
import { comeToRest } from '../operating-point';
import { voidAfterStanding } from '../standing';
import { type Scene, timeToReach } from './manoeuvre';
import { onceFull, RailController } from './rail-controller';
import { railWatch } from './rail-watch';
import { FILLING, nodeOf, storesOf } from './stores';
import type { Trace } from './trace';

/** How often the control unit looks at the rail. Common practice, no source: 5–20 ms. */
export const SAMPLING = 0.02;

/** Cranking from rest: the pumps make good what ran back, then the rail fills against its leaks. */
export function crankTrace({ rig, setting, fuel }: Scene): Trace {
  const { bound } = comeToRest(rig, setting, fuel, 'cranking');
  const { ambient, sensor, railCommand } = bound.surroundings;
  const rail = railWatch(rig, bound);
  const command = { pressure: railCommand, baseDemand: rig.control.baseDemand.cranking };
  const controller = new RailController({
    control: rig.control,
    sensor,
    fullScale: rail.fullScale,
    ambient,
    node: rail.node,
    command: () => command,
  });
  const moments = followTransient(
    bound.network,
    {
      stores: storesOf(rig, bound, voidAfterStanding(rig, setting)),
      start: bound.start.map(() => ambient),
      until: rig.traces.crank.seconds,
      longestStep: SAMPLING,
      controller: onceFull(controller, nodeOf(bound, rig.primingNode), ambient + FILLING),
    },
    ({ time, pressures }) => ({
      time,
      value: rail.sensed(pressures),
    }),
  );
  const times = moments.map(({ time }) => time);
  const values = moments.map(({ value }) => value);
  return {
    id: 'crank',
    lines: [
      { id: 'sensed-rail-pressure', times, values },
      { id: 'commanded-rail-pressure', times, values: times.map(() => railCommand) },
    ],
    features: {
      secondsToEnable: timeToReach(times, values, rig.injectionEnableMpa * 1e6),
      pressureReached: values[values.length - 1] ?? 0,
    },
  };
}
