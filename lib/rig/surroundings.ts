import { airDensity, ambientPressure } from '../fluids/atmosphere';
import type { Pascal, RevolutionPerSecond } from '../units';
import type { SteadyConditionId } from './condition';
import { elementOfKind, type Rig, type RigCondition } from './rig';
import { type SensorLine, sensorLine } from './sensor-line';
import type { Setting } from './setting';

/** Everything outside an element that its law needs to know in one condition, but for the fuel where it stands. */
export interface Surroundings {
  ambient: Pascal;
  airDensity: number;
  engineSpeed: RevolutionPerSecond;
  shotsPerRevolution: number;
  liftPumpVolts: number;
  railCommand: Pascal;
  /** m³ per shot. */
  injected: number;
  sensor: SensorLine;
  /** Sensed pressure below which nothing is injected; 0 once the engine runs. */
  injectionEnable: Pascal;
  /** Tank level, 0…1. */
  tankLevel: number;
  /** How long it has been run so. */
  minutes: number;
}

export function surroundingsOf(rig: Rig, setting: Setting, conditionId: SteadyConditionId): Surroundings {
  const condition: RigCondition = rig.conditions[conditionId];
  const ambient = ambientPressure(setting.altitude);
  return {
    ambient,
    airDensity: airDensity(ambient, setting.airTemperature),
    engineSpeed: condition.engineRpm / 60,
    shotsPerRevolution: rig.shotsPerRevolution,
    liftPumpVolts: condition.liftPumpVolts,
    railCommand: condition.railCommandMpa * 1e6,
    injected: condition.injectedMm3PerShot * 1e-9,
    sensor: sensorLine(elementOfKind(rig, 'rail-sensor')),
    injectionEnable: conditionId === 'cranking' ? rig.injectionEnableMpa * 1e6 : 0,
    tankLevel: setting.tankLevel,
    minutes: condition.minutes,
  };
}
