import { solveInPlace } from '../hydraulics/linear-system';
import type { Branch, Solution } from '../hydraulics/network';
import type { Kelvin } from '../units';
import type { BoundRig, SideTemperatures } from './build-network';
import type { SteadyConditionId } from './condition';
import type { RigElement } from './element';
import { layoutOf } from './layout';
import { elementOfKind, findOfKind, type Rig, type RigCondition } from './rig';
import type { Setting } from './setting';

/** Heat and flow of one kind of moment, in the terms of the balance. */
interface Medium {
  density: number;
  /** J/(kg·K) */
  heatCapacity: number;
  /** ∂h/∂p at constant temperature, (1 − βT)/ρ, m³/kg. */
  perPascal: number;
  /** Temperature from which enthalpies count. */
  rest: Kelvin;
}

/**
 * Temperature of every node: enthalpy carried by the flows, upwind, as h = c_p (T − T_rest) + (1 − βT) (p − p_amb)/ρ.
 *
 *     Σ_in ṁ (h_up + w) + P  =  h Σ_in ṁ + K (T − T_rest)
 *
 * A restriction keeps h, so throttling warms: 0.45 K/MPa for diesel. A pump adds w = Δp/(ρη), the control unit's plate its
 * heat P, and each node loses a little to the air. The tank is one stirred volume that has been fed with the return for
 * the condition's minutes. Properties are those of the suction side. Air counts as the fuel it makes room for.
 *
 * @source Steady-flow energy equation, any thermodynamics text; (1 − βT)Δp/(ρc_p) for throttling as on the reference page 1.5.
 */
export function heatBalance(
  rig: Rig,
  setting: Setting,
  conditionId: SteadyConditionId,
  bound: BoundRig,
  { pressures, flows }: Solution,
): Float64Array {
  const condition = rig.conditions[conditionId];
  const medium = mediumOf(bound, setting.airTemperature + condition.restRiseK);
  const size = bound.network.nodes.length;
  const matrix = matrixFor(size);
  const temperatures = new Float64Array(size);
  addLosses(matrix, temperatures, rig, setting, condition, bound, pressures, medium);
  addFlows(matrix, temperatures, condition, bound, pressures, flows, medium);
  holdFixed(matrix, temperatures, bound);
  solveInPlace(matrix, temperatures, size, size);
  const { ambient } = bound.surroundings;
  for (let node = 0; node < size; node++) {
    const heads = medium.perPascal * ((pressures[node] as number) - ambient);
    temperatures[node] = medium.rest + ((temperatures[node] as number) - heads) / medium.heatCapacity;
  }
  return temperatures;
}

function mediumOf({ fluids: { suction } }: BoundRig, rest: Kelvin): Medium {
  const { density, heatCapacity, expansion } = suction;
  return { density, heatCapacity, perPascal: (1 - expansion * rest) / density, rest };
}

const matrices = new Map<number, Float64Array>();

/** An empty matrix, lent until the next balance. */
function matrixFor(size: number): Float64Array {
  const matrix = matrices.get(size) ?? new Float64Array(size * size);
  matrices.set(size, matrix);
  return matrix.fill(0);
}

/** What draws each node towards the air, and the tank towards what it was. */
function addLosses(
  matrix: Float64Array,
  right: Float64Array,
  rig: Rig,
  setting: Setting,
  condition: RigCondition,
  { surroundings, nodeIndex }: BoundRig,
  pressures: Float64Array,
  medium: Medium,
): void {
  const size = right.length;
  const tank = elementOfKind(rig, 'tank');
  const inTank = nodeIndex.get(tank.to);
  const store = tankStore(tank, setting, condition, medium);
  for (let node = 0; node < size; node++) {
    const conductance = node === inTank ? store.conductance : rig.lineLossWPerK;
    const warmth = node === inTank ? store.towards - medium.rest : 0;
    const heads = medium.perPascal * ((pressures[node] as number) - surroundings.ambient);
    const pull = conductance / medium.heatCapacity;
    matrix[node * size + node] = pull;
    right[node] = pull * (medium.heatCapacity * warmth + heads);
  }
}

/** What the flows carry, upwind, with the work and heat that they pick up on the way. */
function addFlows(
  matrix: Float64Array,
  right: Float64Array,
  { engineRpm }: RigCondition,
  { network, elements }: BoundRig,
  pressures: Float64Array,
  flows: Float64Array,
  { density }: Medium,
): void {
  const size = right.length;
  for (let index = 0; index < elements.length; index++) {
    const element = elements[index] as RigElement;
    const { from, to } = network.branches[index] as Branch;
    const flow = flows[index] as number;
    if (element.kind === 'tank' || flow === 0) continue;
    const up = flow > 0 ? from : to;
    const down = flow > 0 ? to : from;
    const mass = density * Math.abs(flow);
    matrix[down * size + down] = (matrix[down * size + down] as number) + mass;
    matrix[down * size + up] = (matrix[down * size + up] as number) - mass;
    const heat = element.kind === 'cooling-plate' && engineRpm > 0 ? element.heatW : 0;
    const work = workOn(element, flow, (pressures[to] as number) - (pressures[from] as number));
    right[down] = (right[down] as number) + work + heat;
  }
}

/** What is held from outside takes in flow, but its own temperature is the air's. */
function holdFixed(matrix: Float64Array, right: Float64Array, { network: { fixed } }: BoundRig): void {
  const size = right.length;
  for (let node = 0; node < size; node++) {
    if (fixed[node] === undefined) continue;
    matrix.fill(0, node * size, (node + 1) * size);
    matrix[node * size + node] = 1;
    right[node] = 0;
  }
}

/** Shaft power of a pump that raises pressure, W. */
function workOn(element: RigElement, flow: number, rise: number): number {
  return 'efficiency' in element ? (Math.max(0, flow) * Math.max(0, rise)) / element.efficiency : 0;
}

/** Even an empty tank has its walls and what the pick-up does not reach. */
const LEAST_LEVEL = 0.08;

/**
 * What holds the tank's temperature, as a conductance towards a temperature: its own heat content over the minutes it has
 * been fed, and the air.
 */
function tankStore(
  tank: ReturnType<typeof elementOfKind<'tank'>>,
  setting: Setting,
  { minutes, tankRiseK }: RigCondition,
  { density, heatCapacity }: Medium,
) {
  const content =
    density * heatCapacity * tank.volumeL * 1e-3 * Math.max(LEAST_LEVEL, setting.tankLevel * tank.levelShare);
  const inertia = content / (minutes * 60);
  const conductance = inertia + tank.coolingWPerK;
  const air = setting.airTemperature + tank.warmthK;
  return { conductance, towards: air + (inertia / conductance) * tankRiseK };
}

/** Temperatures of the sides: the mean of their nodes. */
export function sideTemperatures(rig: Rig, nodes: Float64Array, air: Kelvin): SideTemperatures {
  const { members } = layoutOf(rig);
  return {
    ambient: air,
    suction: mean(nodes, members.suction, air),
    low: mean(nodes, members.low, air),
    high: mean(nodes, members.high, air),
    return: mean(nodes, members.return, air),
  };
}

function mean(values: Float64Array, members: readonly number[], otherwise: number): number {
  if (members.length === 0) return otherwise;
  let sum = 0;
  for (const index of members) sum += values[index] as number;
  return sum / members.length;
}

/** Rises per pascal of commanded rail pressure, of an ordinary pump and of leakage mixed into a return. Only a first guess. */
const HIGH_RISE = 0.27e-6;
const RETURN_RISE = 0.16e-6;

/** Where the search for temperatures sets out. */
export function firstTemperatures(rig: Rig, setting: Setting, conditionId: SteadyConditionId): SideTemperatures {
  const { tankRiseK, restRiseK, railCommandMpa, engineRpm } = rig.conditions[conditionId];
  const suction = setting.airTemperature + tankRiseK + (findOfKind(rig, 'tank')?.warmthK ?? 0);
  const running = engineRpm > 0;
  const low = running ? suction + 1 : (suction + setting.airTemperature + restRiseK) / 2;
  return {
    ambient: setting.airTemperature,
    suction,
    low,
    high: low + HIGH_RISE * railCommandMpa * 1e6,
    return: low + RETURN_RISE * railCommandMpa * 1e6,
  };
}
