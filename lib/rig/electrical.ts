import type { Rested } from './operating-point';
import { elementOfKind, findOfKind, type Rig } from './rig';
import { REFERENCE_VOLTS, signalVolts } from './sensor-line';
import type { NamedState } from './values';

/** Share of its dead-head current that a lift pump draws against no head. Assumed. */
const FREE_CURRENT = 0.4;

/** What a meter shows at the connectors: lift pump, metering actuator, rail sensor. V, A and Ω. */
export function electricalValues(rig: Rig, { bound: { surroundings: at } }: Rested, { pressures }: NamedState) {
  const sensor = elementOfKind(rig, 'rail-sensor');
  const rail = (pressures[sensor.node] ?? 0) - at.ambient;
  return {
    ...liftPumpValues(rig, at.liftPumpVolts, pressures),
    meteringResistance: elementOfKind(rig, 'metering-valve').coilOhm,
    railSensorVoltage: signalVolts(at.sensor, rail, sensor.fullScaleMpa * 1e6),
    railReferenceVoltage: REFERENCE_VOLTS * sensor.referenceShare,
  };
}

/**
 * Voltage at the pump's connector with the pump running, and its current, which follows its load:
 *
 *     I = I_rated (V / V_rated) (0.4 + 0.6 Δp / Δp_dead)
 */
function liftPumpValues(rig: Rig, supplied: number, pressures: NamedState['pressures']) {
  const pump = findOfKind(rig, 'lift-pump');
  if (!pump) return {};
  const volts = supplied * (pump.circuitShare > 0 ? pump.supplyShare : 1);
  const share = volts / pump.ratedVolts;
  const deadHead = pump.deadHeadKpa * 1e3 * pump.condition * share * share;
  const rise = (pressures[pump.to] ?? 0) - (pressures[pump.from] ?? 0);
  const load = deadHead > 0 ? Math.min(1, Math.max(0, rise / deadHead)) : 0;
  return {
    liftPumpVoltage: volts,
    liftPumpCurrent: pump.ratedAmps * share * pump.circuitShare * (FREE_CURRENT + (1 - FREE_CURRENT) * load),
  };
}
