import { hookUpKey, type RouteStep } from '@/lib/diagnosis/next-check';
import type { Course } from '@/lib/grading/grade';

/** A check that would have told more than the one that was made. */
export interface Skipped {
  step: RouteStep;
  /** `seq` of the reading that was taken in its place; null where none was taken after all. */
  insteadOf: number | null;
}

/** As many as one looks into. */
const MOST = 3;

/**
 * Checks that the learner never made although they told most, those first where the choice was worth least against them.
 * Where every choice was the best, the first of the expert's that is left.
 */
export function skippedChecks({ steps, expert }: Course): Skipped[] {
  const made = new Set(steps.map(keyOf));
  const open = steps
    .flatMap(({ best, perMinute, seq }) =>
      best ? [{ step: best, insteadOf: seq, lost: best.perMinute - perMinute }] : [],
    )
    .filter(({ step, lost }) => lost > 0 && !made.has(keyOf(step)))
    .sort((a, b) => b.lost - a.lost);
  const first = open.filter(({ step }, index) => index === open.findIndex((one) => keyOf(one.step) === keyOf(step)));
  if (first.length > 0) return first.slice(0, MOST).map(({ step, insteadOf }) => ({ step: plain(step), insteadOf }));
  const left = expert.find((step) => !made.has(keyOf(step)));
  return left ? [{ step: plain(left), insteadOf: null }] : [];
}

function keyOf({ check, condition }: Pick<RouteStep, 'check' | 'condition'>): string {
  return hookUpKey(check, condition);
}

function plain({ check, condition, instrument, minutes }: RouteStep): RouteStep {
  return { check, condition, instrument, minutes };
}
