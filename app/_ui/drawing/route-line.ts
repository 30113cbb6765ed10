import type { Point } from '@/lib/rig/drawing';

/** How far a line leaves a part before it may turn. */
const STUB = 14;

/**
 * A right-angled line from a part's end to the nearest point of a node's line.
 *
 * @param heading  Unit step in which the end points away from its part.
 */
export function routeLine(end: Point, heading: Point, node: readonly Point[]): Point[] {
  const direct = nearestPoint(end, node);
  if (aligned(end, direct, heading)) return [end, direct];
  const stub: Point = [end[0] + heading[0] * STUB, end[1] + heading[1] * STUB];
  const foot = nearestPoint(stub, node);
  const corner: Point = heading[0] === 0 ? [stub[0], foot[1]] : [foot[0], stub[1]];
  if (aligned(stub, foot, [0, 0])) return [end, stub, foot];
  return [end, corner, foot];
}

/** Straight ahead, or, without a heading, level or plumb. */
function aligned([x, y]: Point, [fx, fy]: Point, [hx, hy]: Point): boolean {
  if (hx === 0 && hy === 0) return x === fx || y === fy;
  return hx === 0 ? x === fx && (fy - y) * hy >= 0 : y === fy && (fx - x) * hx >= 0;
}

function nearestPoint(from: Point, line: readonly Point[]): Point {
  const [only, ...rest] = line;
  if (!only) return from;
  const feet = rest.map((end, i) => footOn(from, line[i] ?? only, end));
  return [only, ...feet].reduce((best, foot) => (distance(from, foot) < distance(from, best) ? foot : best));
}

function footOn([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): Point {
  const length = (bx - ax) ** 2 + (by - ay) ** 2;
  if (length === 0) return [ax, ay];
  const along = Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length));
  return [ax + along * (bx - ax), ay + along * (by - ay)];
}

function distance([x, y]: Point, [fx, fy]: Point): number {
  return (x - fx) ** 2 + (y - fy) ** 2;
}

export function linePath(points: readonly Point[]): string {
  return points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x} ${y}`).join('');
}
