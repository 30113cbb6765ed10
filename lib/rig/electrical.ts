import type { OperatingPoint, Rested } from './operating-point';
import { elementOfKind, findOfKind, type Rig } from './rig';
import { REFERENCE_VOLTS, signalVolts } from './sensor-line';

/** Share of its dead-head current that a lift pump draws against no head. Assumed. */
const FREE_CURRENT = 0.4;

/** Adds what a meter shows at the connectors: lift pump, metering actuator, rail sensor. V, A and Ω. */
export function addElectrical(rig: Rig, { bound: { surroundings: at } }: Rested, point: OperatingPoint): void {
  const { pressures, values } = point;
  const sensor = elementOfKind(rig, 'rail-sensor');
  const rail = (pressures[sensor.node] ?? 0) - at.ambient;
  addLiftPump(rig, at.liftPumpVolts, point);
  values.meteringResistance = elementOfKind(rig, 'metering-valve').coilOhm;
  values.railSensorVoltage = signalVolts(at.sensor, rail, sensor.fullScaleMpa * 1e6);
  values.railReferenceVoltage = REFERENCE_VOLTS * sensor.referenceShare;
}

/**
 * Voltage at the pump's connector with the pump running, and its current, which follows its load:
 *
 *     I = I_rated (V / V_rated) (0.4 + 0.6 Δp / Δp_dead)
 */
function addLiftPump(rig: Rig, supplied: number, { pressures, values }: OperatingPoint): void {
  const pump = findOfKind(rig, 'lift-pump');
  if (!pump) return;
  // Without current nothing is lost on the way.
  const volts = supplied * (pump.circuitShare > 0 ? pump.supplyShare : 1);
  const share = volts / pump.ratedVolts;
  const deadHead = pump.deadHeadKpa * 1e3 * pump.condition * share * share;
  const rise = (pressures[pump.to] ?? 0) - (pressures[pump.from] ?? 0);
  const load = deadHead > 0 ? Math.min(1, Math.max(0, rise / deadHead)) : 0;
  values.liftPumpVoltage = volts;
  values.liftPumpCurrent = pump.ratedAmps * share * pump.circuitShare * (FREE_CURRENT + (1 - FREE_CURRENT) * load);
}
