import { type ConditionId, isSteady, type SteadyConditionId } from '../rig/condition';
import type { OperatingPoints } from '../rig/operating-point';
import type { Rig } from '../rig/rig';
import type { ComplaintId, TroubleCode } from './work-order';

/** What is said of a vehicle in which nothing about the fuel system can be noticed. */
export const unfoundedComplaints: readonly ComplaintId[] = ['lacks-power', 'starts-slowly', 'hunts'];

/** Everything that `complaintOf` looks at. */
export const complaintValues: readonly (readonly [SteadyConditionId, string])[] = [
  ['cranking', 'willStart'],
  ['cranking', 'secondsToPrime'],
  ['cranking', 'secondsToEnable'],
  ['idle', 'engineSpeed'],
  ['idle', 'injectedShare'],
  ['idle', 'railShare'],
  ['idle', 'freeGasFraction'],
  ['full-load', 'injectedShare'],
  ['full-load', 'waterShare'],
];

/** What a driver would bring the vehicle in for, worst first; undefined when nothing can be noticed. */
export function complaintOf(rig: Rig, points: OperatingPoints, codes: readonly TroubleCode[]): ComplaintId | undefined {
  const { complaints } = rig;
  if (!canRun(points, 'idle')) return 'will-not-start';
  if (powerShare(points) < complaints.powerShare) return 'lacks-power';
  if (secondsToStart(points) > complaints.startSeconds) return 'starts-slowly';
  if (idlesUnsteadily(rig, points)) return 'hunts';
  return codes.length > 0 ? 'warning-lamp' : undefined;
}

/** What the engine gets of the fuel it is asked to burn; water in it does not burn. */
function powerShare(points: OperatingPoints): number {
  return value(points, 'full-load', 'injectedShare') * (1 - value(points, 'full-load', 'waterShare'));
}

/** Cranking time from the first turn to the first injection, s; infinite when it never comes. */
export function secondsToStart(points: OperatingPoints): number {
  const { secondsToPrime, secondsToEnable } = points.cranking.values;
  return (secondsToPrime ?? Number.POSITIVE_INFINITY) + (secondsToEnable ?? Number.POSITIVE_INFINITY);
}

/** Below this share of the commanded fuel an engine does not keep running. */
const STALL_SHARE = 0.3;

/** Whether a condition can be reached at all: a running one needs an engine that starts and gets fuel there. */
export function canRun(points: OperatingPoints, condition: ConditionId): boolean {
  // A snap acceleration sets out from idle.
  if (!isSteady(condition)) return canRun(points, 'idle');
  if (value(points, condition, 'engineSpeed') === 0 || condition === 'cranking') return true;
  return value(points, 'cranking', 'willStart') === 1 && value(points, condition, 'injectedShare') > STALL_SHARE;
}

/** Those of the conditions that this state can reach. */
export function conditionsReachable(points: OperatingPoints, conditions: readonly ConditionId[]): ConditionId[] {
  return conditions.filter((condition) => canRun(points, condition));
}

/** Too much or too little fuel for what is asked, or bubbles in it: the governor hunts for its speed. */
function idlesUnsteadily({ complaints }: Rig, points: OperatingPoints): boolean {
  const [least, most] = complaints.idleShare;
  const share = value(points, 'idle', 'injectedShare') * Math.sqrt(value(points, 'idle', 'railShare'));
  return share < least || share > most || value(points, 'idle', 'freeGasFraction') > complaints.idleGasFraction;
}

function value(points: OperatingPoints, condition: SteadyConditionId, key: string): number {
  const found = points[condition].values[key];
  if (found === undefined) throw new RangeError(`No ${key} at ${condition}`);
  return found;
}
