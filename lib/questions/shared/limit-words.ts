import type { LimitLine } from '../../rig/rig';
import { fromSi, toSi, type Unit } from '../../units';
import type { Line } from '../line';
import { exact, exactNumber } from './exact';

type Ends = Pick<LimitLine, 'min' | 'max' | 'unit'>;

/** A limit in the words of its kind: the lines `atLeast`, `atMost` and `between`. */
export function limitWords({ min, max, unit }: Ends): Line {
  if (min === undefined) return { say: 'atMost', with: { max: exact(max ?? 0, unit) } };
  if (max === undefined) return { say: 'atLeast', with: { min: exact(min, unit) } };
  return { say: 'between', with: { min: exactNumber(min), max: exact(max, unit) } };
}

/** The ends of a limit in another unit. */
export function limitIn({ min, max, unit }: Ends, other: Unit): { min?: number; max?: number } {
  const convert = (end: number) => (other === unit ? end : fromSi(toSi(end, unit), other));
  return { ...(min !== undefined && { min: convert(min) }), ...(max !== undefined && { max: convert(max) }) };
}
