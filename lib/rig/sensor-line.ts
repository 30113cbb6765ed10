import type { Pascal } from '../units';
import type { ElementOf } from './element';

/** What the control unit makes of a true gauge pressure p: gain·p + offset. */
export interface SensorLine {
  gain: number;
  offset: Pascal;
  /** Whether the signal of a rail without pressure lies where the control unit believes it. */
  believed: boolean;
}

/** Volts, of a ratiometric pressure sensor. */
export const REFERENCE_VOLTS = 5;
const SIGNAL_AT_NONE = 0.1;
const SIGNAL_SPAN = 0.8;
/** Signals below this are taken for a broken line. Common practice, no source. */
const LEAST_SIGNAL_VOLTS = 0.25;

/**
 * A ratiometric sensor gives V = V_ref·(0.1 + 0.8·p/p_fs). The control unit reckons with 5 V whatever the reference really
 * is, so a reference that reaches the sensor only in part, s·5 V, makes it see s·p − (1 − s)·p_fs/8.
 *
 * @source The 0.5–4.5 V span is common practice, no source; the rest is arithmetic.
 */
export function sensorLine({ offsetMpa, fullScaleMpa, referenceShare }: ElementOf<'rail-sensor'>): SensorLine {
  const offset = offsetMpa * 1e6 - ((1 - referenceShare) * fullScaleMpa * 1e6 * SIGNAL_AT_NONE) / SIGNAL_SPAN;
  const atNone = (offset / (fullScaleMpa * 1e6)) * SIGNAL_SPAN + SIGNAL_AT_NONE;
  return { gain: referenceShare, offset, believed: atNone * REFERENCE_VOLTS >= LEAST_SIGNAL_VOLTS };
}

/** Gauge pressure as the control unit sees it, within what the sensor spans. */
export function sensedPressure({ gain, offset }: SensorLine, pressure: Pascal, fullScale: Pascal): Pascal {
  return Math.min(Math.max(0, gain * pressure + offset), fullScale);
}

/** Volts on the signal line at a true gauge pressure. */
export function signalVolts({ gain, offset }: SensorLine, pressure: Pascal, fullScale: Pascal): number {
  const seen = (gain * pressure + offset) / fullScale;
  return Math.min(REFERENCE_VOLTS, Math.max(0, REFERENCE_VOLTS * (SIGNAL_AT_NONE + SIGNAL_SPAN * seen)));
}
