/** A curve to be described: its values at the times that all curves of a chart share. */
export type Curve = readonly number[];

/**
 * Those points of some curves over the same times that tell most of their shape: both ends, and then again and again the
 * one that lies furthest from the straight lines drawn so far, on paper as wide as it is high.
 *
 * @returns indexes in order, at most `most`.
 * @source Greedy form of Douglas & Peucker's line simplification, 1973 (from memory).
 */
export function tellingPoints(times: readonly number[], curves: readonly Curve[], most: number): number[] {
  const chosen = times.length > 1 ? [0, times.length - 1] : times.map((_, index) => index);
  const height = Math.max(...curves.flat().map(Math.abs)) || 1;
  const duration = (times.at(-1) ?? 0) - (times[0] ?? 0) || 1;
  const along = times.map((time) => time / duration);
  const drawn = curves.map((curve) => curve.map((value) => value / height));
  while (chosen.length < most) {
    const next = furthest(along, drawn, chosen);
    if (next === undefined || next.distance < 1e-3) break;
    chosen.push(next.index);
    chosen.sort((a, b) => a - b);
  }
  return chosen;
}

function furthest(times: readonly number[], curves: readonly Curve[], chosen: readonly number[]) {
  let found: { index: number; distance: number } | undefined;
  for (const [place, start] of chosen.entries()) {
    const end = chosen[place + 1];
    if (end === undefined) break;
    for (let index = start + 1; index < end; index++) {
      const distance = Math.max(...curves.map((curve) => offLine(times, curve, start, end, index)));
      if (!found || distance > found.distance) found = { index, distance };
    }
  }
  return found;
}

/** How far a point lies from the straight line between two others, square to it. */
function offLine(times: readonly number[], curve: Curve, start: number, end: number, index: number): number {
  const [from = 0, to = 0, at = 0] = [times[start], times[end], times[index]];
  const [low = 0, high = 0, value = 0] = [curve[start], curve[end], curve[index]];
  const [run, rise] = [to - from, high - low];
  return Math.abs(run * (value - low) - rise * (at - from)) / Math.hypot(run, rise);
}
