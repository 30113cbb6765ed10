import type { Fuel } from '../fluids/fuel';
import { type FittedFuel, type FuelState, fittedFuel, fuelState } from '../fluids/fuel-state';
import { waxLoading } from '../fluids/wax';
import type { Control } from '../hydraulics/hold-pressure';
import type { Branch, Network } from '../hydraulics/network';
import { type Kelvin, type Pascal, ZERO_CELSIUS } from '../units';
import { bindLaw } from './bind-law';
import type { SteadyConditionId } from './condition';
import type { RigElement } from './element';
import { layoutOf } from './layout';
import { elementOfKind, findOfKind, type Rig, type RigCondition, type RigNode, type Side } from './rig';
import type { Setting } from './setting';
import { type Surroundings, surroundingsOf } from './surroundings';

/** One temperature for each pressure side: what the fuel's properties are taken at. */
export type SideTemperatures = Record<Side, Kelvin>;

/** A rig in one condition, ready to solve. */
export interface BoundRig {
  network: Network;
  /** The element of each branch. */
  elements: readonly RigElement[];
  /** Index of each node. */
  nodeIndex: ReadonlyMap<string, number>;
  /** Absent when the engine does not turn, or nobody believes the sensor. */
  control: Control | undefined;
  /** Demand where nothing controls it. */
  restDemand: number;
  start: Float64Array;
  surroundings: Surroundings;
  fluids: Record<Side, FuelState>;
}

/** Binds a rig's parameters to element laws for one setting, condition and set of temperatures. */
export function buildNetwork(
  rig: Rig,
  setting: Setting,
  fuel: Fuel,
  conditionId: SteadyConditionId,
  temperatures: SideTemperatures,
): BoundRig {
  const condition = rig.conditions[conditionId];
  const at = surroundingsOf(rig, setting, conditionId);
  const fluids = fluidsAt(fittedFuel(fuel), temperatures);
  const { ids, indexOf, ends } = layoutOf(rig);
  const cloudPoint = cloudPointOf(rig, fuel);
  const branches: Branch[] = [];
  const elements: RigElement[] = [];
  for (let index = 0; index < ends.length; index++) {
    const between = ends[index];
    const element = rig.elements[index];
    if (!between || !element) continue;
    const { from, to, side } = between;
    const law = bindLaw(inService(rig, element, setting, fuel, cloudPoint, temperatures[side]), fluids[side], at);
    if (!law) continue;
    branches.push({ id: element.id, from, to, law });
    elements.push(element);
  }
  return {
    network: { nodes: ids, fixed: rig.nodes.map((node) => (node.fixed ? at.ambient : undefined)), branches },
    elements,
    nodeIndex: indexOf,
    control: controlOf(rig, condition, at, indexOf),
    restDemand: condition.engineRpm > 0 && !at.sensor.believed ? rig.control.limpDemand : 0,
    start: startPressures(rig, condition, at),
    surroundings: at,
    fluids,
  };
}

function fluidsAt(fuel: FittedFuel, { ambient, suction, low, high, return: back }: SideTemperatures) {
  return {
    ambient: fuelState(fuel, ambient),
    suction: fuelState(fuel, suction),
    low: fuelState(fuel, low),
    high: fuelState(fuel, high),
    return: fuelState(fuel, back),
  };
}

/** Cloud point of what is really in the tank. */
export function cloudPointOf(rig: Rig, { cloudPointC }: Fuel): Kelvin {
  return ZERO_CELSIUS + cloudPointC + (findOfKind(rig, 'tank')?.cloudShiftK ?? 0);
}

/** A filter as old as the setting says, and as loaded with wax as its fuel's temperature makes it. */
function inService(
  rig: Rig,
  element: RigElement,
  setting: Setting,
  { cloudPointC, filterabilityC }: Fuel,
  cloudPoint: Kelvin,
  temperature: Kelvin,
): RigElement {
  if (element.kind !== 'filter') return element;
  const rule = rig.ageing.find((line) => line.element === element.id);
  const age = rule ? 1 + (rule.pluggingAtEnd - 1) * setting[rule.age] : 1;
  const filterability = cloudPoint - (cloudPointC - filterabilityC);
  const wax = waxLoading({ cloudPoint, filterability }, temperature, element.ratingUm * 1e-6);
  return { ...element, plugging: element.plugging * age * wax };
}

function controlOf(
  rig: Rig,
  { engineRpm, railCommandMpa }: RigCondition,
  { ambient, sensor }: Surroundings,
  nodeIndex: ReadonlyMap<string, number>,
): Control | undefined {
  const node = nodeIndex.get(elementOfKind(rig, 'rail-sensor').node);
  if (engineRpm === 0 || node === undefined || !sensor.believed) return undefined;
  // The controller holds what it sees at its command, so a sensor that adds holds the truth down by as much.
  const target = (railCommandMpa * 1e6 - sensor.offset) / sensor.gain;
  return { node, target: ambient + Math.max(0, target) };
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
  const set = findOfKind(rig, 'pressure-regulator')?.setKpa ?? 300;
  return set * 1e3 * Math.min(1, engineRpm / 500);
}
