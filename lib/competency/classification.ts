import { type Consistency, consistencyOf } from './consistency';
import { effectiveLength, type ObservedScores, type TrueScores, trueScoresOf } from './true-scores';

/** Shares of people by the side of the cut that their true score lies on, and the one that their points lie on. */
export interface Classification extends Consistency {
  /** Share on the same side with both. */
  accuracy: number;
  bothAbove: number;
  bothBelow: number;
  /** Passes, and should not. */
  falseAbove: number;
  /** Should pass, and does not. */
  falseBelow: number;
}

/**
 * How accurate and how consistent passing by points is, from one form and its reliability.
 *
 * @param cut  Points that pass.
 * @returns Undefined where points spread no more than chance makes them.
 * @source Livingston & Lewis 1995, Journal of Educational Measurement 32 (from memory).
 */
export function classificationAt(cut: number, observed: ObservedScores): Classification | undefined {
  const scores = trueScoresOf(observed);
  return scores && classify(cut / observed.highest, scores, Math.max(1, Math.round(effectiveLength(observed))));
}

/**
 * The same where the true scores are known: points are as many equal tasks right as a binomial distribution has it.
 *
 * @param cut  Share of the points that passes, 0…1.
 * @param length  Tasks.
 */
export function classify(cut: number, scores: TrueScores, length: number): Classification {
  const passes = passing(length, Math.ceil(cut * length - ROUNDING));
  const [below, above] = [sharesBelow(cut, scores), sharesAbove(cut, scores)];
  const all = sum(below, () => 1) + sum(above, () => 1);
  const share = (points: readonly Point[], of: (pass: number) => number) =>
    sum(points, (score) => of(passes(score))) / all;
  const [falseAbove, bothAbove] = [share(below, (pass) => pass), share(above, (pass) => pass)];
  const [bothBelow, falseBelow] = [share(below, (pass) => 1 - pass), share(above, (pass) => 1 - pass)];
  const twice = share(below, (pass) => pass ** 2) + share(above, (pass) => pass ** 2);
  return {
    ...consistencyOf(twice, bothAbove + falseAbove),
    accuracy: bothAbove + bothBelow,
    bothAbove,
    bothBelow,
    falseAbove,
    falseBelow,
  };
}

const ROUNDING = 1e-9;

/** P(so many of the tasks right, or more) by true score. */
function passing(length: number, least: number): (score: number) => number {
  const logChoices = new Float64Array(length + 1);
  for (let right = 1; right <= length; right++)
    logChoices[right] = (logChoices[right - 1] as number) + Math.log((length - right + 1) / right);
  return (score) => {
    let pass = 0;
    for (let right = Math.max(0, least); right <= length; right++)
      pass += Math.exp((logChoices[right] as number) + logPower(score, right) + logPower(1 - score, length - right));
    return Math.min(1, pass);
  };
}

/** Anything to the power of 0 is 1, 0 too. */
function logPower(base: number, exponent: number): number {
  return exponent === 0 ? 0 : exponent * Math.log(base);
}

/** A true score and how many people it stands for, up to a common factor. */
interface Point {
  score: number;
  weight: number;
}

function sum(points: readonly Point[], of: (score: number) => number): number {
  return points.reduce((total, { score, weight }) => total + weight * of(score), 0);
}

function sharesBelow(cut: number, { alpha, beta, low, high }: TrueScores): Point[] {
  const end = Math.min(1, Math.max(0, (cut - low) / (high - low)));
  return nodes.map(({ part, weight }) => {
    const at = end * part;
    return { score: low + (high - low) * at, weight: end * weight * at ** (alpha - 1) * (1 - at) ** (beta - 1) };
  });
}

/** From the other end it is the same. */
function sharesAbove(cut: number, { alpha, beta, low, high }: TrueScores): Point[] {
  const mirrored = { alpha: beta, beta: alpha, low: 1 - high, high: 1 - low };
  return sharesBelow(1 - cut, mirrored).map(({ score, weight }) => ({ score: 1 - score, weight }));
}

/**
 * Points and weights between 0 and 1 that crowd at both ends, where a beta distribution may rise without bound: the tanh-sinh
 * rule.
 *
 * @source Takahasi & Mori 1974, Publ. RIMS 9 (from memory).
 */
const nodes = Array.from({ length: 129 }, (_, at) => {
  const place = (at - 64) / 20;
  const part = 1 / (1 + Math.exp(-Math.PI * Math.sinh(place)));
  return { part, weight: (Math.PI * Math.cosh(place) * part * (1 - part)) / 20 };
});
