import type { Standing, TopicStanding } from './intake-outcome';
import type { RoleProfile } from './profile';
import { isTooOld } from './standing';

/** Why a topic is not ready, the plainest reason first. */
export const missings = ['weak', 'untested', 'too-few', 'too-old', 'undecided'] as const;
export type Missing = (typeof missings)[number];

/** What a topic is short of under a profile; undefined for one that is ready. */
export function missingOf(
  { decision, responses, newestAt }: TopicStanding,
  profile: Pick<RoleProfile, 'minimum' | 'recentDays'>,
  at: number,
): Missing | undefined {
  if (decision === 'ready') return undefined;
  if (decision === 'not-yet') return 'weak';
  if (responses === 0) return 'untested';
  if (isTooOld(newestAt, profile, at)) return 'too-old';
  return responses < profile.minimum ? 'too-few' : 'undecided';
}

/** The topics of a standing that are not ready, in the order of `missings`, the least likely first among equals. */
export function missingTopics(
  { topics, at }: Pick<Standing, 'topics' | 'at'>,
  profile: RoleProfile,
): { standing: TopicStanding; missing: Missing }[] {
  return topics
    .flatMap((standing) => {
      const missing = missingOf(standing, profile, at);
      return missing ? [{ standing, missing }] : [];
    })
    .sort((a, b) => missings.indexOf(a.missing) - missings.indexOf(b.missing) || a.standing.chance - b.standing.chance);
}
