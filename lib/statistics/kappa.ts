export type Agreement =
  | {
      /** 1 where both always gave the same, 0 where they agree as chance would, below 0 where less. */
      kappa: number;
      /** Of kappa, over other answers marked by the same two: large-sample, so a rough one below some thirty. */
      standardError: number;
      /** Answers that both marked. */
      answers: number;
      why?: undefined;
    }
  | { kappa?: undefined; why: 'too-few' | 'no-spread'; answers: number };

/** Marks of one answer by two markers, on the same scale. */
export type MarkPair = readonly [number, number];

/**
 * Quadratic-weighted kappa of two markers.
 *
 *     kappa = 1 − mean (x − y)² / mean over all pairs of answers (xᵢ − yⱼ)²
 *
 * With squared differences for weights, chance needs no table: the mean over all pairs is var x + var y + (x̄ − ȳ)², with the
 * divisor n. So marks may be any numbers, half points too. Where a marker gave everybody
 * the same, kappa is 0 whatever the other did, and says nothing.
 *
 * @source Cohen 1968, Psychological Bulletin 70; standard error of Fleiss, Cohen & Everitt 1969, Psychological Bulletin 72
 *   (both from memory), written as the mean square of each answer's pull on kappa.
 */
export function quadraticKappa(marks: readonly MarkPair[]): Agreement {
  const answers = marks.length;
  if (answers < 2) return { why: 'too-few', answers };
  if (isConstant(marks, 0) || isConstant(marks, 1)) return { why: 'no-spread', answers };
  const first = momentsOf(marks.map(([mark]) => mark));
  const second = momentsOf(marks.map(([, mark]) => mark));
  const chance = first.variance + second.variance + (first.mean - second.mean) ** 2;
  const apart = marks.reduce((sum, [one, other]) => sum + (one - other) ** 2, 0) / answers;
  const ratio = apart / chance;
  // The derivative of the ratio by an answer's share of all answers; by either margin chance moves too.
  const pulls = marks.map(([one, other]) => {
    const chanceHere = (one - second.mean) ** 2 + second.variance + (other - first.mean) ** 2 + first.variance;
    return ((one - other) ** 2 - ratio * chanceHere) / chance;
  });
  return { kappa: 1 - ratio, standardError: Math.sqrt(momentsOf(pulls).variance / answers), answers };
}

function isConstant(marks: readonly MarkPair[], marker: 0 | 1): boolean {
  return marks.every((pair) => pair[marker] === marks[0]?.[marker]);
}

function momentsOf(values: readonly number[]): { mean: number; variance: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return { mean, variance: values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length };
}
