import { type Grade, type Part, parts } from '../grading/grade';
import type { Change } from './change';

/** Points of a hundred that each part weighs. */
export type Weights = Readonly<Record<Part, number>>;

export interface CasePoints {
  parts: readonly { part: Part; points: number; outOf: number }[];
  /** 0…100, held down by the cap once something dangerous was done. */
  total: number;
}

type Graded = Pick<Grade, 'parts' | 'total' | 'safetyEvents'>;

/**
 * A grade by other weights: each part earns the same share of what it weighs now. The grade itself stays as it is.
 *
 * @param safetyCap  No total rises above this once something dangerous was done.
 */
export function reweighed({ parts: graded, safetyEvents }: Graded, weights: Weights, safetyCap: number): CasePoints {
  const weighed = graded.map(({ part, points, outOf }) => ({
    part,
    // A part that weighed nothing was never earned.
    points: outOf > 0 ? inTenths((points / outOf) * weights[part]) : 0,
    outOf: weights[part],
  }));
  return { parts: weighed, total: totalOf(weighed, safetyEvents.length > 0 ? safetyCap : 100) };
}

/** Points given by a person in the place of a part's own; the cap does not hold down what somebody decided on purpose. */
export function withGiven({ parts: weighed, total }: CasePoints, given: Partial<Record<Part, number>>): CasePoints {
  if (parts.every((part) => given[part] === undefined)) return { parts: weighed, total };
  const changed = weighed.map((one) => ({ ...one, points: Math.min(given[one.part] ?? one.points, one.outOf) }));
  return { parts: changed, total: totalOf(changed, 100) };
}

/** The weights that count after some changes, the last of them first of all; undefined where none changes them. */
export function weightsAfter(changes: readonly Change[]): Weights | undefined {
  return changes.findLast((change) => change.kind === 'weights')?.weights;
}

/** Whether a task counts for nobody after some changes. */
export function isWithdrawn(changes: readonly Change[], place: number): boolean {
  return changes.some((change) => change.kind === 'withdraw' && change.place === place);
}

function totalOf(weighed: CasePoints['parts'], most: number): number {
  const sum = weighed.reduce((total, { points }) => total + points, 0);
  return Math.min(Math.round(sum + 1e-9), most);
}

function inTenths(points: number): number {
  return Math.round(points * 10 + 1e-9) / 10;
}
