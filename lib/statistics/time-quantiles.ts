export interface TimeQuantiles {
  /** Times counted. */
  count: number;
  /** In the unit of the times. */
  lowerQuartile: number;
  median: number;
  upperQuartile: number;
}

/**
 * Median and quartiles of times, between two neighbours by proportion.
 *
 * @param times  Seconds, or any other unit; NaN where none was taken.
 * @returns undefined where there is no time.
 * @source Hyndman & Fan 1996, The American Statistician 50, definition 7 (from memory).
 */
export function timeQuantiles(times: Float64Array): TimeQuantiles | undefined {
  const sorted = times.filter((time) => !Number.isNaN(time)).sort();
  if (sorted.length === 0) return undefined;
  return {
    count: sorted.length,
    lowerQuartile: quantile(sorted, 0.25),
    median: quantile(sorted, 0.5),
    upperQuartile: quantile(sorted, 0.75),
  };
}

function quantile(sorted: Float64Array, share: number): number {
  const at = share * (sorted.length - 1);
  const below = Math.floor(at);
  const low = sorted[below] as number;
  const high = sorted[Math.ceil(at)] as number;
  return low + (at - below) * (high - low);
}
