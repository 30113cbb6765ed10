import type { CubicMetrePerSecond, Pascal } from '../../units';
import type { Law } from './element';

export interface Injectors {
  /** Shots per second × commanded quantity. */
  commandedFlow: CubicMetrePerSecond;
  /** Rail pressure at which the control unit reckons the opening for the commanded quantity. */
  commandedPressure: Pascal;
  /** Longest opening relative to that one. */
  durationHeadroom: number;
  /** What the rail sensor adds to the truth. */
  sensorOffset: Pascal;
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
 * the root of the true pressure. So a sensor that reads high starves the engine. Never falls when the rail rises.
 */
export function injectorsLaw(injectors: Injectors): Law {
  const { commandedFlow, commandedPressure, durationHeadroom, sensorOffset, needleOpening, enable } = injectors;
  return (inlet, _outlet, result) => {
    result.perOutlet = 0;
    const sensed = inlet + sensorOffset;
    const lift = smoothStep(inlet, 0.8 * needleOpening, 1.2 * needleOpening);
    const enabled = smoothStep(sensed, 0.9 * enable, 1.1 * enable);
    if (commandedFlow === 0 || lift === 0 || enabled === 0) {
      result.flow = 0;
      result.perInlet = 0;
      return;
    }
    const corrected = Math.sqrt(inlet / sensed);
    const longest = durationHeadroom * Math.sqrt(inlet / commandedPressure);
    const limited = longest < corrected;
    const share = limited ? longest : corrected;
    const shareSlope = limited ? share / (2 * inlet) : (share * sensorOffset) / (2 * inlet * sensed);
    result.flow = commandedFlow * share * lift * enabled;
    result.perInlet =
      commandedFlow *
      (shareSlope * lift * enabled +
        share * enabled * smoothStepSlope(inlet, 0.8 * needleOpening, 1.2 * needleOpening) +
        share * lift * smoothStepSlope(sensed, 0.9 * enable, 1.1 * enable));
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
