import type { Pascal } from '../../units';
import type { BoundRig } from '../build-network';
import { elementOfKind, type Rig } from '../rig';
import { sensedPressure } from '../sensor-line';
import { nodeOf } from './stores';

/** Where the rail is among the nodes, and what the control unit sees of it. */
export interface RailWatch {
  node: number;
  fullScale: Pascal;
  sensed(pressures: Float64Array): Pascal;
}

export function railWatch(rig: Rig, bound: BoundRig): RailWatch {
  const { ambient, sensor } = bound.surroundings;
  const node = nodeOf(bound, elementOfKind(rig, 'rail').node);
  const fullScale = elementOfKind(rig, 'rail-sensor').fullScaleMpa * 1e6;
  return {
    node,
    fullScale,
    sensed: (pressures) => sensedPressure(sensor, (pressures[node] as number) - ambient, fullScale),
  };
}
