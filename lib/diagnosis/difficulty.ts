/** What makes a case hard, kept with it so that its difficulty can be explained and later fitted to answers. */
export interface Features {
  /** Checks that the expert needs. */
  checks: number;
  /** Different conditions that the expert runs the engine in. */
  conditions: number;
  /** How far the nearest of the expert's readings lies from its limit, in standard uncertainties of its instrument. */
  closeness: number;
  /** Causes that still carry a twentieth of belief or more after the expert's first three readings. */
  lookAlikes: number;
  /** A second cause is at work beside the first. */
  masked: boolean;
}

/**
 * What each feature adds, in logits. Assumed, until answers tell: chosen so that the middle of what the generator draws lies
 * near 0 and most of it within −2…2.
 */
const WEIGHTS = { base: -2.2, checks: 0.25, conditions: 0.25, near: 1.2, lookAlikes: 0.25, masked: 1.5 } as const;
/** Standard uncertainties over which closeness to a limit wears off. */
const NEAR = 4;

/**
 * Difficulty on the scale of the learners' ability, by a linear logistic model of the features.
 *
 * @source Linear logistic test model, Fischer 1973 (from memory); the weights are assumed.
 */
export function difficultyOf({ checks, conditions, closeness, lookAlikes, masked }: Features): number {
  const logit =
    WEIGHTS.base +
    WEIGHTS.checks * checks +
    WEIGHTS.conditions * conditions +
    WEIGHTS.near * Math.exp(-closeness / NEAR) +
    WEIGHTS.lookAlikes * lookAlikes +
    WEIGHTS.masked * Number(masked);
  return Math.round(logit * 100) / 100;
}
