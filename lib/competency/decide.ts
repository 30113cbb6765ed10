import type { Decision } from './decision';
import { chanceAtOrAbove, type Prior } from './posterior';
import { DAY, emptyTally, type HalfLife, posteriorAt, type Tally } from './tally';

/**
 * When something is said of somebody on a topic. Losses give the confidence: where letting somebody through wrongly costs 19
 * times as much as holding somebody back wrongly, 0.95; where 9 times, 0.90.
 */
export interface DecisionRule {
  /** Ready from this chance of being at the cut or above. */
  confidence: number;
  /** Not yet up to this one. */
  refuse: number;
  /** Responses without which nothing is said. */
  minimum: number;
}

/** What the responses on a topic come to. */
export interface TopicEvidence {
  /** Of being at the cut or above, 0…1. */
  chance: number;
  /** Responses that count. */
  count: number;
}

export function decideTopic({ chance, count }: TopicEvidence, { confidence, refuse, minimum }: DecisionRule): Decision {
  if (count < minimum) return 'not-enough-evidence';
  if (chance >= confidence) return 'ready';
  return chance <= refuse ? 'not-yet' : 'not-enough-evidence';
}

/** Of several topics that are all required: ready on each, or not yet on any. Of none, nothing is said. */
export function decideAll(each: readonly Decision[]): Decision {
  if (each.includes('not-yet')) return 'not-yet';
  return each.length > 0 && each.every((one) => one === 'ready') ? 'ready' : 'not-enough-evidence';
}

/** How responses are looked at: against which cut (logits), and how they fade. */
export interface Scale {
  cut: number;
  halfLifeDays: HalfLife;
  prior?: Prior;
}

/** What a tally says at a time (milliseconds). */
export function evidenceAt(tally: Tally, atMs: number, { cut, halfLifeDays, prior }: Scale): TopicEvidence {
  return { chance: chanceAtOrAbove(posteriorAt(tally, atMs, halfLifeDays, prior), cut), count: tally.count };
}

/**
 * When somebody who is ready no longer is if nothing is answered any more, to the day.
 *
 * @param from  Milliseconds; days are counted from here.
 * @returns Milliseconds; null where they are not ready at `from`, or on every day up to the horizon.
 */
export function whenItLapses(
  tally: Tally,
  rule: DecisionRule,
  scale: Scale,
  { from, horizonDays }: { from: number; horizonDays: number },
): number | null {
  const isReady = (day: number) => decideTopic(evidenceAt(tally, from + day * DAY, scale), rule) === 'ready';
  if (scale.halfLifeDays === null || !isReady(0)) return null;
  // Where the prior alone would do, somebody may lapse and be ready again once all has faded; else they lapse once.
  const nothingLeft = evidenceAt(emptyTally, from, scale).chance;
  const day = nothingLeft >= rule.confidence ? firstUnready(isReady, horizonDays) : lastReady(isReady, horizonDays) + 1;
  return day > horizonDays ? null : from + day * DAY;
}

function firstUnready(isReady: (day: number) => boolean, horizon: number): number {
  let day = 1;
  while (day <= horizon && isReady(day)) day++;
  return day;
}

/** By halving: ready up to a day, and not after it. */
function lastReady(isReady: (day: number) => boolean, horizon: number): number {
  if (isReady(horizon)) return horizon;
  let [ready, lapsed] = [0, horizon];
  while (lapsed - ready > 1) {
    const middle = Math.floor((ready + lapsed) / 2);
    if (isReady(middle)) ready = middle;
    else lapsed = middle;
  }
  return ready;
}
