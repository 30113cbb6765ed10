import type { Fault } from './broken-day';

/** How far a fault has gone, as a code to choose words by: `only` where a cause knows no degrees. */
export type Degree = 'only' | 'mild' | 'clear' | 'severe';

/** By thirds of what the cause's severities range over. */
export function degreeOf({ cause: { severity: range }, severity }: Fault): Degree {
  const { min, max } = range;
  if (max === min) return 'only';
  const share = (severity - min) / (max - min);
  if (share < 1 / 3) return 'mild';
  return share < 2 / 3 ? 'clear' : 'severe';
}
