import type { Gauge } from '../gauges/gauge';
import { standardUncertainty } from '../gauges/uncertainty';
import { toSi } from '../units';
import type { Bounds } from './limit';
import type { Shown } from './shown';
import { type Comparison, compare } from './verdict';

/** What an instrument showed, in SI, with how sure that is. */
export interface Measured {
  value: number;
  /** One standard uncertainty. */
  uncertainty: number;
  /** The pointer stopped here: the truth lies further this way. */
  beyond: 'low' | 'high' | undefined;
}

/** Undefined where nothing was measured: a destroyed instrument, a jet of fuel. */
export function measured(shown: Shown, gauge: Gauge): Measured | undefined {
  switch (shown.kind) {
    case 'value':
      return {
        value: toSi(shown.value, shown.unit),
        uncertainty: standardUncertainty({ ...gauge, unit: shown.unit }, shown.value),
        beyond: undefined,
      };
    case 'off-scale':
      return {
        value: toSi(shown.limit, shown.unit),
        uncertainty: standardUncertainty({ ...gauge, unit: shown.unit }, shown.limit),
        beyond: shown.end,
      };
    case 'codes':
      return { value: shown.codes.length, uncertainty: 0, beyond: undefined };
    case 'destroyed':
    case 'jet':
      return undefined;
  }
}

/** How a measurement stands to its limit. A stopped pointer settles what lies between it and where it points. */
export function compareMeasured({ value, uncertainty, beyond }: Measured, bounds: Bounds): Comparison {
  const at = compare(value, bounds, uncertainty);
  if (beyond === undefined || at === 'above' || at === 'below') return at;
  const open = beyond === 'high' ? bounds.max : bounds.min;
  return open === undefined ? at : 'too-close';
}
