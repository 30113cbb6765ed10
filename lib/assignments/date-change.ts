import { type Moment, type Timed, toldAt } from './phase';

/**
 * Whom new dates would hurt. `told`: outcomes are told, so nobody may work on; `begun`: somebody has begun under the old
 * opening; `earlier`: somebody has begun and counts on the time they were promised; `past`: it would close before now.
 */
export type DateHurt = 'told' | 'begun' | 'earlier' | 'past';

/** Undefined where the new dates hurt nobody. */
export function hurtBy(
  assignment: Timed,
  to: { opensAt: Moment; closesAt: Moment },
  { now, begun, mostExtraTime }: { now: Moment; begun: boolean; mostExtraTime: number },
): DateHurt | undefined {
  const { mode } = assignment.rules;
  if (mode === 'assessed' && now.getTime() >= toldAt(assignment, mostExtraTime)) return 'told';
  if (begun && to.opensAt.getTime() !== assignment.opensAt.getTime()) return 'begun';
  const by = to.closesAt.getTime() - assignment.closesAt.getTime();
  if (begun && by < 0) return 'earlier';
  return by !== 0 && to.closesAt.getTime() <= now.getTime() ? 'past' : undefined;
}
