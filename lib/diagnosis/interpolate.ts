/** One slope so many times the other says that something gave way in between: a valve at its stop, a pump that starves. */
const KINK = 6;
/** What the lines from outside add to the chord where a curve bends evenly: exact for a parabola in its middle. */
const BEND = 0.25;

/**
 * A reading between two severities that were solved, from those and their neighbours. Parameters move by powers, and what
 * follows from them nearly does: values of one sign go by their logarithms. Where a controller runs out in between, the two
 * lines from outside are followed to where they meet.
 *
 * @param values  At the solved severities, evenly spaced.
 * @param share  Of the way from `lower` to the next.
 */
export function interpolate(values: ArrayLike<number>, lower: number, share: number): number {
  const from = values[lower] as number;
  const to = values[lower + 1] ?? from;
  if (from === to) return from;
  // What never comes, such as a time to start, has nothing half way to it.
  if (!Number.isFinite(from) || !Number.isFinite(to)) return share < 0.5 ? from : to;
  const before = values[lower - 1] ?? Number.NaN;
  const after = values[lower + 2] ?? Number.NaN;
  const bySize = from * to > 0 && !(before * from <= 0) && !(after * to <= 0);
  if (!bySize) return bent(before, from, to, after, share);
  const sign = from < 0 ? -1 : 1;
  const bentLog = bent(
    Math.log(sign * before),
    Math.log(sign * from),
    Math.log(sign * to),
    Math.log(sign * after),
    share,
  );
  return sign * Math.exp(bentLog);
}

/** Between two values on an even grid, given one more on each side or NaN. */
function bent(before: number, from: number, to: number, after: number, share: number): number {
  const slope = to - from;
  const left = from - before;
  const right = after - to;
  const chord = from + share * slope;
  // Without two neighbours, or where the lines from outside do not meet in between, there is nothing to go by.
  if (!((left < slope && slope < right) || (left > slope && slope > right))) return chord;
  const risen = from + share * left;
  const fallen = to - (1 - share) * right;
  const broken = left < right ? Math.max(risen, fallen) : Math.min(risen, fallen);
  const steep = Math.max(Math.abs(left), Math.abs(right));
  return steep > KINK * Math.min(Math.abs(left), Math.abs(right)) ? broken : chord + BEND * (broken - chord);
}
