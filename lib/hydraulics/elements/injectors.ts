import type { CubicMetrePerSecond, Pascal } from '../../units';
import type { Law } from './element';

export interface Injectors {
  /** Shots per second × commanded quantity. */
  commandedFlow: CubicMetrePerSecond;
  /** Rail pressure at which the control unit reckons the opening for the commanded quantity. */
  commandedPressure: Pascal;
  /** Longest opening relative to that one. */
  durationHeadroom: number;
  ambient: Pascal;
  /** What the control unit makes of a true gauge pressure p: gain·p + offset. */
  sensor: { gain: number; offset: Pascal };
  /** True pressure at which the needles lift. */
  needleOpening: Pascal;
  /** Sensed pressure below which the control unit does not inject at all; 0 when the engine runs. */
  enable: Pascal;
}

/**
 * Fuel injected, all cylinders together.
 *
 *     Q = Q_cmd · min(√(p/p_sensed), h √(p/p_cmd)) · lift(p) · enable(p_sensed)
 *
 * The control unit reckons the opening from the pressure it *sees*, up to a longest opening; what then passes goes with
 * the root of the true pressure. So a sensor that reads high starves the engine, and one that reads low feeds it too much;
 * there the first term is taken where the sensor shows the command, which is where the controller holds it. Never falls
 * when the rail rises.
 */
export function injectorsLaw(injectors: Injectors): Law {
  const { commandedFlow, commandedPressure, durationHeadroom, ambient, sensor, needleOpening, enable } = injectors;
  const readsLow = sensor.offset < 0 || sensor.gain < 1;
  const held = (commandedPressure - sensor.offset) / Math.max(sensor.gain, 1e-3);
  const heldShare = Math.sqrt(held / commandedPressure);
  return (inlet, _outlet, result) => {
    result.flow = 0;
    result.perInlet = 0;
    result.perOutlet = 0;
    const sensed = sensor.gain * (inlet - ambient) + sensor.offset + ambient;
    const lift = smoothStep(inlet, 0.8 * needleOpening, 1.2 * needleOpening);
    const enabled = enable > 0 ? smoothStep(sensed, 0.9 * enable, 1.1 * enable) : 1;
    if (commandedFlow === 0 || lift === 0 || enabled === 0) return;
    const corrected = readsLow ? heldShare : Math.sqrt(inlet / sensed);
    const longest = durationHeadroom * Math.sqrt(inlet / commandedPressure);
    const limited = longest < corrected;
    const share = limited ? longest : corrected;
    const correctedSlope = readsLow ? 0 : (corrected / 2) * (1 / inlet - sensor.gain / sensed);
    const shareSlope = limited ? share / (2 * inlet) : correctedSlope;
    result.flow = commandedFlow * share * lift * enabled;
    result.perInlet =
      commandedFlow *
      (shareSlope * lift * enabled +
        share * enabled * smoothStepSlope(inlet, 0.8 * needleOpening, 1.2 * needleOpening) +
        share * lift * sensor.gain * smoothStepSlope(sensed, 0.9 * enable, 1.1 * enable));
  };
}

/** 0 below `from`, 1 above `to`, a cubic between. */
function smoothStep(x: number, from: number, to: number): number {
  if (x >= to) return 1;
  if (x <= from) return 0;
  const t = (x - from) / (to - from);
  return t * t * (3 - 2 * t);
}

function smoothStepSlope(x: number, from: number, to: number): number {
  if (x >= to || x <= from) return 0;
  const t = (x - from) / (to - from);
  return (6 * t * (1 - t)) / (to - from);
}
