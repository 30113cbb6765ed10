import { bunsenCoefficient, releasedAir } from '../fluids/dissolved-air';
import type { Fuel } from '../fluids/fuel';
import { STANDARD_GRAVITY } from '../units';
import { cloudPointOf } from './build-network';
import { addElectrical } from './electrical';
import { addReturnsByCylinder } from './injector-returns';
import type { OperatingPoint, Rested } from './operating-point';
import { elementOfKind, findOfKind, type Rig } from './rig';
import { sensedPressure } from './sensor-line';
import type { Setting } from './setting';

/** Adds what can be asked of a state that is no node's pressure and no element's flow, SI. */
export function addValues(rig: Rig, setting: Setting, fuel: Fuel, rested: Rested, point: OperatingPoint): void {
  addRail(rig, rested, point);
  addFuel(rig, setting, fuel, rested, point);
  addElectrical(rig, rested, point);
  addReturnsByCylinder(rig, setting, rested, point);
}

function addRail(
  rig: Rig,
  { bound: { surroundings: at }, solution }: Rested,
  { pressures, flows, values }: OperatingPoint,
) {
  const sensor = elementOfKind(rig, 'rail-sensor');
  const trueRail = (pressures[sensor.node] ?? 0) - at.ambient;
  const sensed = sensedPressure(at.sensor, trueRail, sensor.fullScaleMpa * 1e6);
  const commandedFlow = at.injected * at.engineSpeed * at.shotsPerRevolution;
  const relief = findOfKind(rig, 'relief-valve');
  values.ambientPressure = at.ambient;
  values.engineSpeed = at.engineSpeed;
  values.commandedRailPressure = at.railCommand;
  values.sensedRailPressure = sensed;
  values.trueRailPressure = trueRail;
  // A controller with nothing to control leaves its valve where it rests.
  values.meteringDemand = solution.demand;
  values.railShare = at.railCommand > 0 ? sensed / at.railCommand : 1;
  values.injectedShare = commandedFlow > 0 ? (flows[elementOfKind(rig, 'injectors').id] ?? 0) / commandedFlow : 1;
  values.reliefOpening = relief ? trueRail - relief.openMpa * 1e6 : -1;
  values.returnPressure = (pressures[elementOfKind(rig, 'injector-return').to] ?? 0) - at.ambient;
  values.deliveryPressure = (pressures[elementOfKind(rig, 'metering-valve').from] ?? 0) - at.ambient;
}

function addFuel(rig: Rig, setting: Setting, fuel: Fuel, rested: Rested, point: OperatingPoint) {
  const { pressures, temperatures, values } = point;
  const tank = elementOfKind(rig, 'tank');
  const { surroundings: at, fluids } = rested.bound;
  const tankTemperature = temperatures[tank.to] ?? setting.airTemperature;
  const level = setting.tankLevel * tank.levelShare;
  const head = fluids.suction.density * STANDARD_GRAVITY * tank.depthM * level;
  values.freeGasFraction = freeGas(rig, fuel, rested, point);
  values.fuelTemperature = tankTemperature;
  values.railTemperature = temperatures[elementOfKind(rig, 'rail').node] ?? tankTemperature;
  values.fuelDensity = fluids.suction.density;
  values.waterShare = tank.waterShare;
  values.tankLevel = level;
  // Kelvin between the fuel and its first wax; negative when it is cloudy.
  values.cloudMargin = tankTemperature - cloudPointOf(rig, fuel);
  // Ahead of the supply pump, as its own sensor tells it; none where there is no such place.
  values.intakeVacuum = at.ambient - (pressures['gear-pump-inlet'] ?? at.ambient);
  // What the vent does not let in.
  values.tankVacuum = at.ambient + head - (pressures[tank.to] ?? 0);
  values.outsideLeak = flowOf(rig, 'outside-leak', point);
}

/** Share of the dissolved air's equilibrium release that a few seconds in a suction line allow. Assumed. */
const RELEASE_SHARE = 0.25;
/** A line that has run dry is at its vapour pressure, and so much above it at least. */
const DRY = 1e3;

/** Share of gas in what passes the clear hose: air drawn in at joints, and air that comes out of solution in the vacuum. */
function freeGas(rig: Rig, fuel: Fuel, { bound }: Rested, point: OperatingPoint): number {
  const { pressures, temperatures, flows } = point;
  let passing = 0;
  for (const element of rig.elements)
    if ('to' in element && element.to === rig.sightNode) passing += Math.max(0, flows[element.id] ?? 0);
  if (passing < 1e-9) return 0;
  const temperature = temperatures[rig.sightNode] ?? 288.15;
  const pressure = Math.max(bound.fluids.suction.vapourPressure + DRY, pressures[rig.sightNode] ?? 0);
  const bunsen = bunsenCoefficient(fuel.density15, temperature);
  const released = RELEASE_SHARE * releasedAir(bunsen, bound.surroundings.ambient, pressure, temperature);
  return Math.min(1, flowOf(rig, 'air-leak', point) / passing + released / (1 + released));
}

/** Flow through all elements of a kind. */
function flowOf({ elements }: Rig, kind: 'air-leak' | 'outside-leak', { flows }: OperatingPoint): number {
  let sum = 0;
  for (const element of elements) if (element.kind === kind) sum += Math.max(0, flows[element.id] ?? 0);
  return sum;
}
