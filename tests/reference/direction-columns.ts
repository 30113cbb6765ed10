import type { ConditionId } from '@/lib/rig/condition';
import type { Setting } from '@/lib/rig/setting';
import { mildDay } from '../support/bench-rig';

/** One reading that the direction tables speak of. */
export interface DirectionColumn {
  check: string;
  condition: ConditionId;
  quantity: string;
  /** The least movement that the finest instrument of the check shows, SI. */
  least: number;
  /** Where the scale's zero lies far away, a twentieth of the reading says nothing. */
  farZero?: true;
}

/** A day on which the fuel of the wrong season waxes. */
export const coldDay: Setting = { ...mildDay, airTemperature: 268.15, fuel: 'winter-grade' };

/** Half a millilitre a minute in the small glass. */
const HALF_A_MILLILITRE = 0.5e-6 / 60;
/** Two neighbouring grades are told apart; half of the step between them is nobody's grade. */
const HALF_A_GRADE = 0.5;

export const directionColumns = {
  prime: { check: 'prime-pressure', condition: 'key-on', quantity: 'prime-pressure', least: 2e3 },
  primeT: { check: 'priming-time', condition: 'key-on', quantity: 'priming-time', least: 0.5 },
  sBef: { check: 'suction-before-filter', condition: 'full-load', quantity: 'suction-before-filter', least: 500 },
  sAft: { check: 'suction-after-filter', condition: 'full-load', quantity: 'suction-after-filter', least: 500 },
  suct: { check: 'suction-restriction', condition: 'high-idle', quantity: 'suction-restriction', least: 500 },
  vent: { check: 'tank-vent', condition: 'full-load', quantity: 'tank-vacuum', least: 500 },
  crankG: { check: 'gear-pump-pressure', condition: 'cranking', quantity: 'gear-pump-pressure', least: 5e3 },
  idleG: { check: 'gear-pump-pressure', condition: 'idle', quantity: 'gear-pump-pressure', least: 5e3 },
  loadG: { check: 'gear-pump-pressure', condition: 'full-load', quantity: 'gear-pump-pressure', least: 5e3 },
  spK: { check: 'supply-pump-pressure', condition: 'key-on', quantity: 'supply-pump-pressure', least: 5e3 },
  spI: { check: 'supply-pump-pressure', condition: 'idle', quantity: 'supply-pump-pressure', least: 5e3 },
  spL: { check: 'supply-pump-pressure', condition: 'full-load', quantity: 'supply-pump-pressure', least: 5e3 },
  cool: { check: 'cooling-plate-drop', condition: 'full-load', quantity: 'cooling-plate-drop', least: 1e3 },
  filter: { check: 'main-filter-drop', condition: 'full-load', quantity: 'main-filter-drop', least: 1e3 },
  screen: { check: 'screen-drop', condition: 'full-load', quantity: 'screen-drop', least: 1e3 },
  air: { check: 'air-in-fuel', condition: 'idle', quantity: 'free-gas', least: 0.01 },
  crankR: { check: 'cranking-rail-pressure', condition: 'cranking', quantity: 'cranking-rail-pressure', least: 1e5 },
  idleR: { check: 'rail-pressure', condition: 'idle', quantity: 'sensed-rail-pressure', least: 1e5 },
  loadR: { check: 'rail-pressure', condition: 'full-load', quantity: 'sensed-rail-pressure', least: 1e5 },
  offR: { check: 'rail-pressure', condition: 'key-off', quantity: 'sensed-rail-pressure', least: 1e5 },
  meter: { check: 'rail-pressure', condition: 'idle', quantity: 'metering-command', least: 0.001 },
  relief: {
    check: 'relief-valve-leak',
    condition: 'idle',
    quantity: 'relief-valve-leak',
    least: HALF_A_MILLILITRE,
  },
  reliefL: {
    check: 'relief-valve-leak',
    condition: 'full-load',
    quantity: 'relief-valve-leak',
    least: HALF_A_MILLILITRE,
  },
  injR: {
    check: 'injector-return-flow',
    condition: 'idle',
    quantity: 'injector-return-flow',
    least: HALF_A_MILLILITRE,
  },
  oneInj: {
    check: 'injector-balance',
    condition: 'idle',
    quantity: `injector-${mildDay.cylinder}`,
    least: HALF_A_MILLILITRE,
  },
  oneFour: {
    check: 'injector-balance-four',
    condition: 'idle',
    quantity: `injector-${mildDay.cylinder}`,
    least: HALF_A_MILLILITRE,
  },
  ctrl: { check: 'control-valve-leak', condition: 'idle', quantity: 'control-valve-leak', least: HALF_A_MILLILITRE },
  pumpR: { check: 'pump-return-flow', condition: 'idle', quantity: 'pump-return-flow', least: HALF_A_MILLILITRE },
  rearR: {
    check: 'rear-pump-return-flow',
    condition: 'idle',
    quantity: 'rear-pump-return-flow',
    least: HALF_A_MILLILITRE,
  },
  ret: { check: 'return-restriction', condition: 'full-load', quantity: 'return-restriction', least: 2.5e3 },
  tankT: { check: 'fuel-temperature', condition: 'full-load', quantity: 'tank-temperature', least: 2, farZero: true },
  retT: { check: 'fuel-temperature', condition: 'full-load', quantity: 'return-temperature', least: 2, farZero: true },
  lpV: { check: 'lift-pump-supply', condition: 'key-on', quantity: 'lift-pump-voltage', least: 0.02 },
  lpA: { check: 'lift-pump-supply', condition: 'key-on', quantity: 'lift-pump-current', least: 0.1 },
  ohm: { check: 'metering-actuator', condition: 'key-off', quantity: 'actuator-resistance', least: 0.1 },
  sig: { check: 'rail-sensor-voltage', condition: 'key-off', quantity: 'rail-signal', least: 0.02 },
  ref: { check: 'rail-sensor-voltage', condition: 'key-off', quantity: 'rail-reference', least: 0.02 },
  leak: { check: 'look-over', condition: 'idle', quantity: 'outside-leak', least: HALF_A_GRADE },
  water: { check: 'fuel-sample', condition: 'key-off', quantity: 'water', least: HALF_A_GRADE },
  cloud: { check: 'fuel-sample', condition: 'key-off', quantity: 'cloudiness', least: HALF_A_GRADE },
  density: { check: 'fuel-sample', condition: 'key-off', quantity: 'fuel-density', least: 2, farZero: true },
  level: { check: 'tank-level', condition: 'key-off', quantity: 'tank-level', least: 0.02 },
  primed: { check: 'prime-hold', condition: 'key-on', quantity: 'seconds-to-prime', least: 0.5 },
  held: { check: 'prime-hold', condition: 'key-on', quantity: 'pressure-held', least: 2e3 },
  enable: { check: 'crank-trace', condition: 'cranking', quantity: 'seconds-to-enable', least: 0.05 },
  under: { check: 'snap-trace', condition: 'snap-acceleration', quantity: 'undershoot', least: 5e5 },
  over: { check: 'snap-trace', condition: 'snap-acceleration', quantity: 'overshoot', least: 5e5 },
  half: { check: 'decay-trace', condition: 'key-off', quantity: 'seconds-to-half', least: 0.05 },
  growth: { check: 'tank-vacuum-trace', condition: 'full-load', quantity: 'growth', least: 200 },
} as const satisfies Record<string, DirectionColumn>;

export type ColumnId = keyof typeof directionColumns;
export const columnIds = Object.keys(directionColumns) as ColumnId[];
