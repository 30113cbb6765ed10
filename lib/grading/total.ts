import type { Grade, SafetyEvent } from './grade';
import type { Rubric } from './rubric';

/** Sum of the parts, held in the first band once something dangerous was done. */
export function totalOf(
  parts: Grade['parts'],
  events: readonly SafetyEvent[],
  { bands, safetyCap }: Pick<Rubric, 'bands' | 'safetyCap'>,
): { total: number; capped: boolean; score: NonNullable<Grade['score']> } {
  const sum = Math.round(parts.reduce((total, { points }) => total + points, 0));
  const capped = events.length > 0 && sum > safetyCap;
  const total = capped ? safetyCap : sum;
  return { total, capped, score: scoreOf(total, bands) };
}

/** How many of the bands a total has reached, 0…4. */
function scoreOf(total: number, bands: Rubric['bands']): NonNullable<Grade['score']> {
  return bands.filter((from) => total >= from).length as NonNullable<Grade['score']>;
}
