import type { TraceLineId } from '../rig/traces/trace';
import type { Unit } from '../units';

/** One quantity over time as a recorder drew it. */
export interface ShownLine {
  id: TraceLineId;
  unit: Unit;
  /** Seconds from the start, and the value at each. */
  times: readonly number[];
  values: readonly number[];
}

/** What an instrument showed. Recorded with the act, so that a later version of the content cannot change it. */
export type Shown =
  /** `value` in the instrument's own unit, at its resolution. */
  | {
      kind: 'value';
      quantity: string;
      value: number;
      unit: Unit;
      /** Half the swing of a needle that does not stand still, in the same unit. */
      flutter?: number;
      /** The curves that the value is read off. */
      lines?: readonly ShownLine[];
    }
  /** The pointer stopped at the end of the range, or the curve never comes to what was asked. */
  | {
      kind: 'off-scale';
      quantity: string;
      end: 'low' | 'high';
      limit: number;
      unit: Unit;
      lines?: readonly ShownLine[];
    }
  | { kind: 'codes'; quantity: string; codes: readonly { spn: number; fmi: number }[] }
  /** The computed pressure was beyond what the instrument survives. */
  | { kind: 'destroyed'; quantity: string }
  /** A fitting was opened with pressure behind it. Speed in m/s, gauge pressure in Pa. */
  | { kind: 'jet'; quantity: string; speed: number; pressure: number };
