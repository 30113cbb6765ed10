import { GUARD } from '../../../checks/verdict';
import type { Value } from '../../line';
import { decimalsOf, exact } from '../../shared/exact';
import type { Judgement } from './judgement';

/** What a judgement comes to, in figures that add up as they are printed: each is worked out from those printed before it. */
export interface Printed {
  uncertainty: Value;
  guard: Value;
  limit: Value;
  /** From the reading to the limit, without its sign. */
  distance: Value;
}

/** Significant digits of the guard band, the smallest of what is compared. */
const DIGITS = 3;

export function printedOf({ gauge, shown, line, value, uncertainty, guard, limit }: Judgement): Printed {
  const { unit, resolution } = gauge;
  const given = gauge.unit === line.unit ? decimalsOf(limit) : 0;
  const decimals = Math.max(0, decimalsOf(resolution), decimalsOf(value), given, placesOf(guard));
  const kept = rounded(uncertainty, decimals + 1);
  const end = rounded(limit, decimals);
  return {
    uncertainty: { quantity: kept, unit, decimals: decimals + 1 },
    guard: { quantity: rounded(GUARD * kept, decimals), unit, decimals },
    limit: shown.kind === 'off-scale' ? { quantity: limit, unit } : exact(end, unit),
    distance: exact(rounded(Math.abs(value - end), decimals), unit),
  };
}

/** Decimals that show so many digits of a number. */
function placesOf(value: number): number {
  return DIGITS - 1 - Math.floor(Math.log10(value));
}

function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
