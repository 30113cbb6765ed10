import type { Network } from '../../hydraulics/network';
import { followTransient } from '../../hydraulics/transient';
import type { Pascal, Second } from '../../units';
import { bindLaw } from '../bind-law';
import type { BoundRig } from '../build-network';
import type { ElementKind } from '../element';
import { comeToRest } from '../operating-point';
import type { Rig } from '../rig';
import type { Surroundings } from '../surroundings';
import { SAMPLING } from './crank';
import type { Scene } from './manoeuvre';
import { RailController } from './rail-controller';
import { railWatch } from './rail-watch';
import { storesOf } from './stores';
import type { Trace } from './trace';

/** Share of the full-load quantity that goes into turning the engine up, half-way up. Assumed. */
const ACCELERATION_SHARE = 0.4;
/** The commanded pressure is at its end when the engine is half-way up. Assumed. */
const COMMAND_LEAD = 2;

/** A snap acceleration: from idle to high idle as fast as the engine turns up, commanded against sensed. */
export function snapTrace({ rig, setting, fuel }: Scene): Trace {
  const { bound, solution } = comeToRest(rig, setting, fuel, 'idle');
  const { ambient, sensor } = bound.surroundings;
  const rail = railWatch(rig, bound);
  const { baseDemand } = rig.control;
  const command = (time: Second) => ({
    pressure: commandAt(rig, time),
    baseDemand: baseDemand.idle + (baseDemand['high-idle'] - baseDemand.idle) * commandShare(rig, time),
  });
  const { seconds, pedalAt, rampSeconds } = rig.traces.snap;
  const moments = followTransient(
    (time) => networkAt(rig, bound, time),
    {
      stores: storesOf(rig, bound, 0),
      start: solution.pressures,
      until: seconds,
      longestStep: SAMPLING,
      breaks: [pedalAt, pedalAt + rampSeconds / COMMAND_LEAD, pedalAt + rampSeconds],
      controller: new RailController({
        control: rig.control,
        sensor,
        fullScale: rail.fullScale,
        ambient,
        node: rail.node,
        command,
      }),
    },
    ({ time, pressures }) => ({
      time,
      sensed: rail.sensed(pressures),
      commanded: commandAt(rig, time),
    }),
  );
  const times = moments.map(({ time }) => time);
  const after = moments.filter(({ time }) => time >= pedalAt);
  return {
    id: 'snap',
    lines: [
      { id: 'sensed-rail-pressure', times, values: moments.map(({ sensed }) => sensed) },
      { id: 'commanded-rail-pressure', times, values: moments.map(({ commanded }) => commanded) },
    ],
    features: {
      undershoot: Math.max(0, ...after.map(({ sensed, commanded }) => commanded - sensed)),
      overshoot: Math.max(0, ...after.map(({ sensed, commanded }) => sensed - commanded)),
    },
  };
}

/** 0 at idle, 1 at high idle. */
function ramp(time: Second, from: Second, length: Second): number {
  return Math.min(1, Math.max(0, (time - from) / length));
}

function commandShare({ traces: { snap } }: Rig, time: Second): number {
  return ramp(time, snap.pedalAt, snap.rampSeconds / COMMAND_LEAD);
}

function commandAt(rig: Rig, time: Second): Pascal {
  const [idle, high] = [rig.conditions.idle.railCommandMpa, rig.conditions['high-idle'].railCommandMpa];
  return (idle + (high - idle) * commandShare(rig, time)) * 1e6;
}

/** Elements whose law moves with speed, quantity or command. */
const MOVING: ReadonlySet<ElementKind> = new Set([
  'gear-pump',
  'high-pressure-pump',
  'injectors',
  'injector-return',
  'pressure-control-valve',
]);

function networkAt(rig: Rig, { network, elements, fluids, surroundings }: BoundRig, time: Second): Network {
  const at = surroundingsAt(rig, surroundings, time);
  const sides = new Map(rig.nodes.map(({ id, side }) => [id, side]));
  const branches = network.branches.map((branch, index) => {
    const element = elements[index];
    if (!element || !MOVING.has(element.kind) || !('from' in element)) return branch;
    const law = bindLaw(element, fluids[sides.get(element.from) ?? 'low'], at);
    return law ? { ...branch, law } : branch;
  });
  return { ...network, branches };
}

function surroundingsAt(rig: Rig, idle: Surroundings, time: Second): Surroundings {
  const { pedalAt, rampSeconds } = rig.traces.snap;
  const up = ramp(time, pedalAt, rampSeconds);
  const { engineRpm, injectedMm3PerShot } = rig.conditions['high-idle'];
  const acceleration = 4 * up * (1 - up) * ACCELERATION_SHARE * rig.conditions['full-load'].injectedMm3PerShot * 1e-9;
  return {
    ...idle,
    engineSpeed: idle.engineSpeed + (engineRpm / 60 - idle.engineSpeed) * up,
    injected: idle.injected + (injectedMm3PerShot * 1e-9 - idle.injected) * up + acceleration,
    railCommand: commandAt(rig, time),
  };
}
