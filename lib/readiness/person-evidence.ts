import { type HalfLife, posteriorAt, type Tally } from '../competency/tally';
import type { RecentCases, TopicEvidence } from './standing';

/** All that is kept of what somebody has shown. */
export interface PersonEvidence {
  /** By topic. */
  tallies: ReadonlyMap<string, Tally>;
  /** Cases among the responses, by topic. */
  cases: ReadonlyMap<string, number>;
  safety: RecentCases;
}

export const noEvidence: PersonEvidence = { tallies: new Map(), cases: new Map(), safety: [] };

/** What it comes to on some topics at a moment, aged to it. */
export function evidenceOn(
  { tallies, cases }: PersonEvidence,
  topics: readonly { topic: string }[],
  halfLifeDays: HalfLife,
  at: number,
): Map<string, TopicEvidence> {
  return new Map(
    topics.flatMap(({ topic }) => {
      const tally = tallies.get(topic);
      if (!tally || tally.count === 0) return [];
      const posterior = posteriorAt(tally, at, halfLifeDays);
      return [
        [topic, { posterior, responses: tally.count, cases: cases.get(topic) ?? 0, newestAt: tally.at }] as const,
      ];
    }),
  );
}
