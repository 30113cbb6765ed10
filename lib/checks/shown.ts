import type { Unit } from '../units';

/** What an instrument showed. Recorded with the act, so that a later version of the content cannot change it. */
export type Shown =
  /** `value` in the instrument's own unit, at its resolution. */
  | { kind: 'value'; quantity: string; value: number; unit: Unit }
  /** The pointer stopped at the end of the range. */
  | { kind: 'off-scale'; quantity: string; end: 'low' | 'high'; limit: number; unit: Unit }
  | { kind: 'codes'; quantity: string; codes: readonly { spn: number; fmi: number }[] }
  /** The computed pressure was beyond what the instrument survives. */
  | { kind: 'destroyed'; quantity: string };
