/** How a measurement repeated: the least it took, the middle, and what it scattered. */
export interface Spread {
  min: number;
  median: number;
  mean: number;
  sd: number;
}

export function spreadOf(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b);
  const mean = sorted.reduce((sum, value) => sum + value, 0) / sorted.length;
  const square = sorted.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { min: quantile(sorted, 0), median: quantile(sorted, 0.5), mean, sd: Math.sqrt(square / (sorted.length - 1)) };
}

/** The value below which a share of them lies, by nearest rank. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

/** Milliseconds that something took. */
export function timed(run: () => void): number {
  const start = performance.now();
  run();
  return performance.now() - start;
}

/** Milliseconds of each of several rounds, after some that warm up. */
export function rounds(count: number, run: (round: number) => void): number[] {
  const times: number[] = [];
  for (let round = -2; round < count; round++) {
    const time = timed(() => run(round));
    if (round >= 0) times.push(time);
  }
  return times;
}
