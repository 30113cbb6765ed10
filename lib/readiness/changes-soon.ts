import { whenItLapses } from '../competency/decide';
import type { Decision } from '../competency/decision';
import type { HalfLife, Tally } from '../competency/tally';
import type { Standing, TopicStanding } from './intake-outcome';
import type { RoleProfile } from './profile';
import { DAY } from './standing';

/** A decision that the passing of time alone takes away. What is then left is not enough evidence. */
export interface Change {
  topic: string;
  from: Exclude<Decision, 'not-enough-evidence'>;
  /** Responses weigh less and less, or the newest is older than the profile lets count. */
  because: 'fades' | 'too-old';
  /** ms */
  at: number;
}

/** How evidence is kept and how it fades. */
export interface Kept {
  /** By topic. */
  tallies: ReadonlyMap<string, Tally>;
  halfLifeDays: HalfLife;
}

/** What of a standing changes within so many days if nothing more is answered, the next to change first. */
export function changesSoon(
  { topics, at }: Pick<Standing, 'topics' | 'at'>,
  profile: RoleProfile,
  kept: Kept,
  horizonDays: number,
): Change[] {
  return topics
    .flatMap((topic) => changeOf(topic, profile, kept, { from: at, horizonDays }) ?? [])
    .sort((one, other) => one.at - other.at);
}

interface Ahead {
  from: number;
  horizonDays: number;
}

function changeOf(standing: TopicStanding, profile: RoleProfile, kept: Kept, ahead: Ahead): Change | undefined {
  const { topic, decision: from, newestAt } = standing;
  if (from === 'not-enough-evidence' || newestAt === null) return undefined;
  const stale = newestAt + profile.recentDays * DAY;
  const fades = from === 'ready' ? fadesAt(standing, profile, kept, ahead) : null;
  const change: Change =
    fades !== null && fades < stale
      ? { topic, from, because: 'fades', at: fades }
      : { topic, from, because: 'too-old', at: stale };
  return change.at <= ahead.from + ahead.horizonDays * DAY ? change : undefined;
}

function fadesAt(
  { topic, cut, confidence }: TopicStanding,
  { refuse, minimum }: RoleProfile,
  { tallies, halfLifeDays }: Kept,
  ahead: Ahead,
): number | null {
  const tally = tallies.get(topic);
  return tally ? whenItLapses(tally, { confidence, refuse, minimum }, { cut, halfLifeDays }, ahead) : null;
}
