import type { AssignmentRules } from './rules';

/** What a `Date` is, as far as it is read here. Moments that are worked out are milliseconds since 1970. */
export interface Moment {
  getTime(): number;
}

/** An assignment, as far as its clock goes. */
export interface Timed {
  rules: Pick<AssignmentRules, 'mode' | 'minutes' | 'late'>;
  opensAt: Moment;
  closesAt: Moment;
}

/** `late`: closed, and still taken under the late rule. */
export const phases = ['coming', 'open', 'late', 'closed'] as const;
export type Phase = (typeof phases)[number];

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

/**
 * Where an assignment stands for somebody.
 *
 * @param extraTime  Share of the minutes that they get on top.
 */
export function phaseOf(assignment: Timed, now: Moment, { extraTime = 0 }: { extraTime?: number } = {}): Phase {
  const at = now.getTime();
  if (at < assignment.opensAt.getTime()) return 'coming';
  if (at < closesFor(assignment, extraTime)) return 'open';
  return at < takenUntil(assignment, extraTime) ? 'late' : 'closed';
}

/**
 * When it closes for somebody. Who gets more minutes gets as many on top of the closing, or a window as long as the limit would
 * take from them what they were given; without a limit there is nothing to give more of.
 */
export function closesFor({ rules, closesAt }: Timed, extraTime: number): number {
  return closesAt.getTime() + Math.round((rules.minutes ?? 0) * extraTime * MINUTE_MS);
}

/** Until when work of somebody's is taken at all. */
export function takenUntil(assignment: Timed, extraTime: number): number {
  const { late } = assignment.rules;
  return closesFor(assignment, extraTime) + (late === 'refused' ? 0 : late.hours * HOUR_MS);
}

/** When a turn ends that is begun at a moment, whatever the browser's clock says. */
export function endsAt(assignment: Timed, startedAt: Moment, extraTime: number): number {
  const last = takenUntil(assignment, extraTime);
  const { minutes } = assignment.rules;
  if (minutes === null) return last;
  const limit = startedAt.getTime() + Math.round(minutes * (1 + extraTime) * MINUTE_MS);
  return Math.min(limit, last);
}

/** Points that each hundred of a turn loses for when it was handed in. */
export function lateCost(assignment: Timed, handedInAt: Moment, extraTime: number): number {
  const { late } = assignment.rules;
  return late === 'refused' || handedInAt.getTime() <= closesFor(assignment, extraTime) ? 0 : late.cost;
}

/**
 * From when outcomes are told: of practice from the first, of assessed work when it is taken from nobody any more.
 *
 * @param mostExtraTime  The most that anybody gets at this assignment: who ends last must not hear from the others.
 */
export function toldAt(assignment: Timed, mostExtraTime: number): number {
  return assignment.rules.mode === 'practice' ? assignment.opensAt.getTime() : takenUntil(assignment, mostExtraTime);
}
