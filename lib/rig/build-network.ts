import { airDensity, ambientPressure } from '../fluids/atmosphere';
import type { Fuel } from '../fluids/fuel';
import { fittedFuel, fuelState } from '../fluids/fuel-state';
import type { Control } from '../hydraulics/hold-pressure';
import type { Branch, Network } from '../hydraulics/network';
import type { Pascal } from '../units';
import { bindLaw, type Surroundings } from './bind-law';
import type { ConditionId } from './condition';
import type { RigElement } from './element';
import { elementOfKind, type Rig, type RigCondition, type RigNode } from './rig';
import type { Setting } from './setting';

/** A rig in one condition, ready to solve. */
export interface BoundRig {
  network: Network;
  /** Index of each node. */
  nodeIndex: ReadonlyMap<string, number>;
  /** Absent when the engine does not turn. */
  control: Control | undefined;
  start: Float64Array;
  surroundings: Surroundings;
  temperatures: { fuel: number; rail: number };
}

/** Binds a rig's parameters to element laws for one setting and condition. */
export function buildNetwork(rig: Rig, setting: Setting, fuel: Fuel, conditionId: ConditionId): BoundRig {
  const condition = rig.conditions[conditionId];
  const temperatures = temperaturesIn(setting, condition);
  const at = surroundingsOf(rig, setting, fuel, conditionId);
  const nodeIndex = new Map(rig.nodes.map(({ id }, index) => [id, index]));
  const branches: Branch[] = [];
  for (const element of rig.elements) {
    const law = bindLaw(aged(rig, element, setting), at);
    if (law && 'from' in element) {
      const [from, to] = [nodeIndex.get(element.from), nodeIndex.get(element.to)];
      if (from !== undefined && to !== undefined) branches.push({ id: element.id, from, to, law });
    }
  }
  return {
    network: {
      nodes: rig.nodes.map(({ id }) => id),
      fixed: rig.nodes.map((node) => (node.fixed ? at.ambient : undefined)),
      branches,
    },
    nodeIndex,
    control: controlOf(rig, condition, at, nodeIndex),
    start: startPressures(rig, condition, at),
    surroundings: at,
    temperatures,
  };
}

function temperaturesIn({ airTemperature }: Setting, { fuelRiseK, railRiseK }: RigCondition) {
  const fuel = airTemperature + fuelRiseK;
  return { fuel, rail: fuel + railRiseK };
}

function surroundingsOf(rig: Rig, setting: Setting, fuel: Fuel, conditionId: ConditionId): Surroundings {
  const condition = rig.conditions[conditionId];
  const temperatures = temperaturesIn(setting, condition);
  const prepared = fittedFuel(fuel);
  const ambient = ambientPressure(setting.altitude);
  return {
    ambient,
    airDensity: airDensity(ambient, setting.airTemperature),
    cool: fuelState(prepared, temperatures.fuel),
    hot: fuelState(prepared, temperatures.rail),
    engineSpeed: condition.engineRpm / 60,
    shotsPerRevolution: rig.shotsPerRevolution,
    liftPumpVolts: condition.liftPumpVolts,
    railCommand: condition.railCommandMpa * 1e6,
    injected: condition.injectedMm3PerShot * 1e-9,
    sensorOffset: elementOfKind(rig, 'rail-sensor').offsetMpa * 1e6,
    injectionEnable: conditionId === 'cranking' ? rig.injectionEnableMpa * 1e6 : 0,
    tankLevel: setting.tankLevel,
  };
}

/** A filter as old as the setting says. */
function aged(rig: Rig, element: RigElement, setting: Setting): RigElement {
  if (element.kind !== 'filter') return element;
  const rule = rig.ageing.find((line) => line.element === element.id);
  if (!rule) return element;
  return { ...element, plugging: element.plugging * (1 + (rule.pluggingAtEnd - 1) * setting[rule.age]) };
}

function controlOf(
  rig: Rig,
  { engineRpm, railCommandMpa }: RigCondition,
  { ambient, sensorOffset }: Surroundings,
  nodeIndex: ReadonlyMap<string, number>,
): Control | undefined {
  const node = nodeIndex.get(elementOfKind(rig, 'rail-sensor').node);
  if (engineRpm === 0 || node === undefined) return undefined;
  // The controller holds what it sees at its command, so a sensor that adds holds the truth down by as much.
  return { node, target: Math.max(ambient, ambient + railCommandMpa * 1e6 - sensorOffset) };
}

/** Pressure falls by about this much from one node to the next, which starts every check valve open. */
const STAIR: Pascal = 1.5e3;

/** A first guess that any rig offers: by pressure side, from what drives it, falling from node to node. */
function startPressures(rig: Rig, condition: RigCondition, { ambient, railCommand }: Surroundings): Float64Array {
  const chamber = elementOfKind(rig, 'metering-valve').to;
  const driven = condition.engineRpm > 0 || condition.liftPumpVolts > 0;
  const delivered = ambient + (driven ? deliveryGuess(rig, condition) : 0);
  const guess = ({ id, side, fixed }: RigNode, index: number): Pascal => {
    if (fixed || side === 'ambient' || side === 'return' || id === chamber) return ambient;
    if (side === 'high') return ambient + railCommand;
    return (side === 'low' ? delivered : ambient) - STAIR * index;
  };
  return Float64Array.from(rig.nodes, guess);
}

/** A turning pump reaches its regulator except when it turns slowly. */
function deliveryGuess(rig: Rig, { engineRpm }: RigCondition): Pascal {
  if (engineRpm === 0) return 1e5;
  const set = rig.elements.find((element) => element.kind === 'pressure-regulator')?.setKpa ?? 300;
  return set * 1e3 * Math.min(1, engineRpm / 500);
}
