/** Shares of the points that people would earn on the average, spread as a beta distribution between two ends within 0…1. */
export interface TrueScores {
  alpha: number;
  beta: number;
  low: number;
  high: number;
}

/** What was earned on one form. */
export interface ObservedScores {
  /** Points of each person. */
  points: readonly number[];
  /** Points that could be earned. */
  highest: number;
  /** Between 0 and 1, neither of them. */
  reliability: number;
}

/** Of how many equal tasks, right or wrong, a form would be as reliable. */
export function effectiveLength({ points, highest, reliability }: ObservedScores): number {
  const shares = points.map((one) => one / highest);
  const mean = meanOf(shares);
  const variance = (meanOf(shares.map((share) => (share - mean) ** 2)) * shares.length) / (shares.length - 1);
  return (mean * (1 - mean) - reliability * variance) / (variance * (1 - reliability));
}

/**
 * True scores by the moments of the observed ones: four moments give four parameters; where these leave 0…1, two give a
 * distribution over the whole of it.
 *
 * @returns Undefined where the observed scores spread no more than chance makes them.
 * @source Lord 1965, Psychometrika 30; Hanson 1991, ACT Research Report 91-5 (both from memory).
 */
export function trueScoresOf(observed: ObservedScores): TrueScores | undefined {
  const moments = rawMoments(observed);
  const [mean, second] = moments;
  const variance = second - mean ** 2;
  if (!(variance > 0)) return undefined;
  return fourParameters(moments) ?? twoParameters(mean, variance);
}

type RawMoments = readonly [number, number, number, number];

/** A binomial's descending factorials, x (x − 1) (x − 2) …, have powers of its chance for means. */
function rawMoments(observed: ObservedScores): RawMoments {
  const length = effectiveLength(observed);
  const scores = observed.points.map((one) => (one / observed.highest) * length);
  const moment = (order: number) => meanOf(scores.map((score) => descending(score, order))) / descending(length, order);
  return [moment(1), moment(2), moment(3), moment(4)];
}

function descending(value: number, order: number): number {
  let product = 1;
  for (let less = 0; less < order; less++) product *= value - less;
  return product;
}

function twoParameters(mean: number, variance: number): TrueScores {
  const sum = (mean * (1 - mean)) / variance - 1;
  return { alpha: mean * sum, beta: (1 - mean) * sum, low: 0, high: 1 };
}

function fourParameters([mean, second, third, fourth]: RawMoments): TrueScores | undefined {
  const variance = second - mean ** 2;
  const skewness = (third - 3 * mean * second + 2 * mean ** 3) / variance ** 1.5;
  const kurtosis = (fourth - 4 * mean * third + 6 * mean ** 2 * second - 3 * mean ** 4) / variance ** 2;
  const sum = (6 * (kurtosis - skewness ** 2 - 1)) / (6 + 3 * skewness ** 2 - 2 * kurtosis);
  const apart = Math.sqrt(1 - (24 * (sum + 1)) / ((sum + 2) * (sum + 3) * kurtosis - 3 * (sum - 6) * (sum + 1)));
  const alpha = (sum / 2) * (1 - Math.sign(skewness) * apart);
  const beta = sum - alpha;
  const width = sum * Math.sqrt((variance * (sum + 1)) / (alpha * beta));
  const low = mean - (width * alpha) / sum;
  const sound = alpha > 0 && beta > 0 && low >= 0 && low + width <= 1;
  return sound ? { alpha, beta, low, high: low + width } : undefined;
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
