/** Drawn among so many of the best, so that no task is seen by everybody. Common practice, no source. */
const AMONG = 5;

export interface Ranked<Candidate> {
  candidate: Candidate;
  worth: number;
}

/**
 * Those that one is drawn among: the worthiest first; of equals, the one that comes first.
 *
 * @param worth  What a candidate is worth; those worth nothing are left out.
 */
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
