import { gasStore } from '../../hydraulics/store';
import { followTransient } from '../../hydraulics/transient';
import { STANDARD_GRAVITY } from '../../units';
import { comeToRest } from '../operating-point';
import { elementOfKind } from '../rig';
import { rebound, type Scene } from './manoeuvre';
import { nodeOf } from './stores';
import type { Trace } from './trace';

/** A long run under load with the cap tight: fuel that leaves the tank must be made good by air, or the air left expands. */
export function tankVacuumTrace(scene: Scene): Trace {
  const { rig, setting, fuel } = scene;
  const { assumed } = comeToRest(rig, setting, fuel, 'full-load');
  // The tank's own store takes the place of what the law assumes to have expanded by then.
  const bound = rebound(scene, 'full-load', assumed, { minutes: Number.POSITIVE_INFINITY });
  const { ambient } = bound.surroundings;
  const tank = elementOfKind(rig, 'tank');
  const level = setting.tankLevel * tank.levelShare;
  const vented = ambient + bound.fluids.suction.density * STANDARD_GRAVITY * tank.depthM * level;
  const node = nodeOf(bound, tank.to);
  const stores = bound.network.nodes.map((_, index) =>
    index === node ? gasStore({ gas: tank.volumeL * 1e-3 * (1 - level), ambient: vented, polytropic: 1 }) : undefined,
  );
  const moments = followTransient(
    bound.network,
    {
      stores,
      start: bound.start.map((pressure, index) => (index === node ? vented : pressure)),
      until: rig.traces.tankVacuum.minutes * 60,
      controller: { demand: () => rig.control.baseDemand['full-load'] },
    },
    ({ time, pressures }) => ({ time, value: vented - (pressures[node] as number) }),
  );
  const times = moments.map(({ time }) => time);
  const values = moments.map(({ value }) => value);
  return {
    id: 'tank-vacuum',
    lines: [{ id: 'tank-vacuum', times, values }],
    features: { growth: (values[values.length - 1] ?? 0) - (values[0] ?? 0) },
  };
}
