import { intervalOf, meanOf, neutralPrior, type Posterior, posteriorFrom } from './posterior';
import { responseOf, type Weighed } from './states';
import { agedTo, fading, type Tally, tallyOf } from './tally';

/** Share of the chance that an interval holds. */
export const PROGRESS_INTERVAL = 0.9;

/** Logits that an interval has to widen, or its mean to move, by age alone to be called fading. Assumed: what the eye sees on the scale. */
const FADED = 0.15;

/** Where an interval lies. */
export type AgainstLine = 'above' | 'across' | 'below';

export interface AbilityRange {
  mean: number;
  low: number;
  high: number;
}

/** What somebody has shown on a topic, at some moment. */
export interface TopicProgress extends AbilityRange {
  topic: string;
  /** Responses that count, and cases among them. */
  responses: number;
  cases: number;
  /** Mean of the shares that were earned, 0…1, as they count. */
  meanShare: number;
  /** Of the newest response, ms. */
  newestAt: number;
  /** What it was like before age took from it, where that made a difference. */
  before: AbilityRange | null;
  /** The newest first. */
  shown: readonly AgedResponse[];
}

/** A response with what it counts today, 0…1. */
export interface AgedResponse extends Weighed {
  counting: number;
}

/**
 * What responses on one topic come to.
 *
 * @param responses  At least one, as `weighed` gives them.
 * @returns undefined where none of them counts.
 */
export function topicProgress(
  topic: string,
  responses: readonly Weighed[],
  halfLifeDays: number,
  at: number,
): TopicProgress | undefined {
  const tally = tallyOf(responses.map(responseOf), halfLifeDays);
  if (tally.count === 0) return undefined;
  const now = rangeOf(posteriorFrom(neutralPrior, agedTo(tally, at, halfLifeDays)));
  const unaged = rangeOf(posteriorOf(tallyOf(responses.map(responseOf), null)));
  const shown = responses.map((one) => ({ ...one, counting: one.weight * fading(one.at, at, halfLifeDays) }));
  const counting = shown.filter(({ weight }) => weight > 0);
  const total = counting.reduce((sum, one) => sum + one.counting, 0);
  return {
    topic,
    ...now,
    responses: tally.count,
    cases: counting.filter(({ source }) => source === 'case').length,
    meanShare: total > 0 ? counting.reduce((sum, one) => sum + one.counting * one.detail.share, 0) / total : 0,
    newestAt: tally.at,
    before: hasFaded(unaged, now) ? unaged : null,
    shown: shown.reverse(),
  };
}

/** How an interval lies to the line. */
export function againstLine({ low, high }: Pick<AbilityRange, 'low' | 'high'>, cut: number): AgainstLine {
  if (low >= cut) return 'above';
  return high < cut ? 'below' : 'across';
}

function posteriorOf({ sum }: Tally): Posterior {
  return posteriorFrom(neutralPrior, sum);
}

function rangeOf(posterior: Posterior): AbilityRange {
  return { mean: meanOf(posterior), ...intervalOf(posterior, PROGRESS_INTERVAL) };
}

function hasFaded(before: AbilityRange, now: AbilityRange): boolean {
  const wider = now.high - now.low - (before.high - before.low);
  return wider >= FADED || Math.abs(now.mean - before.mean) >= FADED;
}
