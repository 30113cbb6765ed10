import type { RandomStream } from '../random';
import type { PoolTopic } from './pool';
import { expectedInformation, type Posterior } from './posterior';
import { information } from './task-model';

/** Drawn among so many of the best, so that no task is seen by everybody. Common practice, no source. */
const AMONG = 5;

export interface Ranked<Candidate> {
  candidate: Candidate;
  worth: number;
}

/**
 * One of the candidates that are worth most, drawn among the best five.
 *
 * @param worth  What a candidate is worth; those worth nothing are not chosen.
 * @returns Undefined where no candidate is worth anything.
 */
export function chooseTask<Candidate>(
  candidates: readonly Candidate[],
  worth: (candidate: Candidate) => number,
  random: RandomStream,
): Candidate | undefined {
  const best = bestOf(candidates, worth);
  return best.length > 0 ? random.pick(best).candidate : undefined;
}

/** Those that one is drawn among: the worthiest first; of equals, the one that comes first. */
export function bestOf<Candidate>(
  candidates: readonly Candidate[],
  worth: (candidate: Candidate) => number,
): Ranked<Candidate>[] {
  const best: Ranked<Candidate>[] = [];
  for (const candidate of candidates) {
    const own = worth(candidate);
    if (!(own > 0) || own <= (best[AMONG - 1]?.worth ?? 0)) continue;
    const place = best.findIndex((other) => other.worth < own);
    best.splice(place < 0 ? best.length : place, 0, { candidate, worth: own });
    if (best.length > AMONG) best.pop();
  }
  return best;
}

/** What a task tells where the decision is made: information at the cut of each topic that is still open, added up. */
export function worthAtCuts(topics: readonly PoolTopic[], cuts: ReadonlyMap<string, number>): number {
  return topics.reduce((sum, { topic, model }) => {
    const cut = cuts.get(topic);
    return cut === undefined ? sum : sum + information(model, cut);
  }, 0);
}

/** What a task is expected to tell of somebody, over the topics that are looked at. */
export function worthFor(topics: readonly PoolTopic[], posteriors: ReadonlyMap<string, Posterior>): number {
  return topics.reduce((sum, { topic, model }) => {
    const posterior = posteriors.get(topic);
    return posterior === undefined ? sum : sum + expectedInformation(posterior, model);
  }, 0);
}
