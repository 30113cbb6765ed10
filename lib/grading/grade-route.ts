import type { Catalogue } from '../catalogue';
import type { RouteStep } from '../diagnosis/expert-route';
import type { ReadingAct } from './acts';
import type { Score } from './grade';
import type { CallGrade } from './grade-call';

/** Full marks from this share of the expert's pace. */
const FULL_FROM = 0.8;

/**
 * Minutes of shop time against the expert's route on the same case. A fast route to the wrong cause earns nothing, and
 * neither does a call without a reading.
 */
export function gradeRoute(
  readings: readonly ReadingAct[],
  { checks }: Catalogue,
  expert: readonly RouteStep[],
  { onTheWay }: CallGrade,
): Score & { minutes: number } {
  const minutes = readings.reduce((sum, { check }) => sum + (checks.get(check)?.minutes ?? 0), 0);
  const expertMinutes = expert.reduce((sum, step) => sum + step.minutes, 0);
  const values = { minutes, expertMinutes };
  if (readings.length === 0) return { share: 0, minutes, notes: [{ part: 'route', code: 'no-readings', values }] };
  if (!onTheWay) return { share: 0, minutes, notes: [{ part: 'route', code: 'led-astray', values }] };
  const pace = expertMinutes / minutes;
  const code = pace >= FULL_FROM ? 'route-short' : 'route-long';
  return { share: Math.min(1, pace / FULL_FROM), minutes, notes: [{ part: 'route', code, values }] };
}
