import { bunsenCoefficient, releasedAir } from '../fluids/dissolved-air';
import type { Fuel } from '../fluids/fuel';
import type { CubicMetrePerSecond, Pascal } from '../units';
import { cloudPointOf } from './build-network';
import { electricalValues } from './electrical';
import { returnsByCylinder } from './injector-returns';
import type { Rested } from './operating-point';
import { elementOfKind, findOfKind, type Rig } from './rig';
import { sensedPressure } from './sensor-line';
import type { Setting } from './setting';

/** Pressures and flows by name. */
export interface NamedState {
  pressures: Record<string, Pascal>;
  temperatures: Record<string, number>;
  flows: Record<string, CubicMetrePerSecond>;
}

/** What can be asked of a state that is no node's pressure and no element's flow, SI. */
export function valuesOf(
  rig: Rig,
  setting: Setting,
  fuel: Fuel,
  rested: Rested,
  state: NamedState,
): Record<string, number> {
  return {
    ...railValues(rig, rested, state),
    ...fuelValues(rig, setting, fuel, rested, state),
    ...electricalValues(rig, rested, state),
    ...returnsByCylinder(rig, setting, rested, state),
  };
}

function railValues(rig: Rig, { bound: { surroundings: at }, solution }: Rested, { pressures, flows }: NamedState) {
  const sensor = elementOfKind(rig, 'rail-sensor');
  const trueRail = (pressures[sensor.node] ?? 0) - at.ambient;
  const sensed = sensedPressure(at.sensor, trueRail, sensor.fullScaleMpa * 1e6);
  const commandedFlow = at.injected * at.engineSpeed * at.shotsPerRevolution;
  const relief = findOfKind(rig, 'relief-valve');
  return {
    ambientPressure: at.ambient,
    engineSpeed: at.engineSpeed,
    commandedRailPressure: at.railCommand,
    sensedRailPressure: sensed,
    trueRailPressure: trueRail,
    // A controller with nothing to control leaves its valve where it rests.
    meteringDemand: solution.demand,
    railShare: at.railCommand > 0 ? sensed / at.railCommand : 1,
    injectedShare: commandedFlow > 0 ? (flows[elementOfKind(rig, 'injectors').id] ?? 0) / commandedFlow : 1,
    reliefOpening: relief ? trueRail - relief.openMpa * 1e6 : -1,
    returnPressure: (pressures[elementOfKind(rig, 'injector-return').to] ?? 0) - at.ambient,
    deliveryPressure: (pressures[elementOfKind(rig, 'metering-valve').from] ?? 0) - at.ambient,
  };
}

/** Share of the dissolved air's equilibrium release that a few seconds in a suction line allow. Assumed. */
const RELEASE_SHARE = 0.25;

function fuelValues(
  rig: Rig,
  setting: Setting,
  fuel: Fuel,
  rested: Rested,
  { pressures, temperatures, flows }: NamedState,
) {
  const tank = elementOfKind(rig, 'tank');
  const { surroundings: at, fluids } = rested.bound;
  const tankTemperature = temperatures[tank.to] ?? setting.airTemperature;
  const level = setting.tankLevel * tank.levelShare;
  const head = fluids.suction.density * 9.80665 * tank.depthM * level;
  return {
    freeGasFraction: freeGas(rig, fuel, rested, { pressures, temperatures, flows }),
    fuelTemperature: tankTemperature,
    railTemperature: temperatures[elementOfKind(rig, 'rail').node] ?? tankTemperature,
    fuelDensity: fluids.suction.density,
    waterShare: tank.waterShare,
    tankLevel: level,
    /** Kelvin between the fuel and its first wax; negative when it is cloudy. */
    cloudMargin: tankTemperature - cloudPointOf(rig, fuel),
    /** What the vent does not let in. */
    tankVacuum: at.ambient + head - (pressures[tank.to] ?? 0),
    outsideLeak: rig.elements.reduce(
      (sum, { kind, id }) => (kind === 'outside-leak' ? sum + Math.max(0, flows[id] ?? 0) : sum),
      0,
    ),
  };
}

/** Share of gas in what passes the clear hose: air drawn in at joints, and air that comes out of solution in the vacuum. */
function freeGas(rig: Rig, fuel: Fuel, { bound }: Rested, { pressures, temperatures, flows }: NamedState): number {
  const drawn = rig.elements.reduce((sum, { kind, id }) => (kind === 'air-leak' ? sum + (flows[id] ?? 0) : sum), 0);
  const passing = rig.elements.reduce(
    (sum, element) =>
      'to' in element && element.to === rig.sightNode ? sum + Math.max(0, flows[element.id] ?? 0) : sum,
    0,
  );
  if (passing < 1e-9) return 0;
  const temperature = temperatures[rig.sightNode] ?? 288.15;
  // A line that has run dry is at its vapour pressure, not below.
  const pressure = Math.max(bound.fluids.suction.vapourPressure + 1e3, pressures[rig.sightNode] ?? 0);
  const bunsen = bunsenCoefficient(fuel.density15, temperature);
  const released = RELEASE_SHARE * releasedAir(bunsen, bound.surroundings.ambient, pressure, temperature);
  return Math.min(1, drawn / passing + released / (1 + released));
}
