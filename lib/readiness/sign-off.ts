import type { Standing } from './intake-outcome';
import { type Missing, missingTopics } from './missing';
import type { RoleProfile } from './profile';
import { DAY } from './standing';

/** A hands-on check, as far as a sign-off asks for it. */
export interface HandsOnCheck {
  id: string;
  profileId: string | null;
  items: readonly { id: string; score: number }[];
  unsafe: boolean;
  /** ms */
  observedAt: number;
  takenBack: boolean;
}

/** What stands in the way of a sign-off. Every one of them says what would settle it. */
export type Obstacle =
  | { code: 'oneself' }
  | { code: 'topic'; topic: string; missing: Missing }
  | { code: 'unsafe'; events: number }
  | { code: 'too-few-cases'; more: number }
  | { code: 'hands-on-missing' }
  | { code: 'hands-on-unsafe' }
  | { code: 'hands-on-old'; days: number }
  | { code: 'hands-on-below'; item: string };

export interface ToSign {
  profile: RoleProfile;
  standing: Standing;
  /** Of the person, in any order. */
  checks: readonly HandsOnCheck[];
  learnerId: string;
  signerId: string;
}

/** Everything that stands in the way; nothing where a person may sign. Nobody is signed off by this alone. */
export function obstaclesTo({ profile, standing, checks, learnerId, signerId }: ToSign): Obstacle[] {
  const { safety } = standing;
  return [
    ...(learnerId === signerId ? [{ code: 'oneself' } as const] : []),
    ...missingTopics(standing, profile).map(
      ({ standing: { topic }, missing }): Obstacle => ({ code: 'topic', topic, missing }),
    ),
    ...(safety.code === 'unsafe' ? [{ code: 'unsafe', events: safety.events } as const] : []),
    ...(safety.code === 'too-few-cases'
      ? [{ code: 'too-few-cases', more: profile.safety.atLeast - safety.cases } as const]
      : []),
    ...handsOnObstacles(profile, newestCheck(checks, profile), standing.at),
  ];
}

/** The hands-on check that counts for a role: the newest that was made for it and not taken back. */
export function newestCheck<C extends HandsOnCheck>(
  checks: readonly C[],
  { id }: Pick<RoleProfile, 'id'>,
): C | undefined {
  return checks
    .filter(({ profileId, takenBack }) => profileId === id && !takenBack)
    .reduce<C | undefined>((newest, one) => (newest && newest.observedAt >= one.observedAt ? newest : one), undefined);
}

function handsOnObstacles(
  { handsOn, recentDays }: RoleProfile,
  check: HandsOnCheck | undefined,
  at: number,
): Obstacle[] {
  // Something dangerous that was seen counts even where nothing had to be seen.
  if (check?.unsafe) return [{ code: 'hands-on-unsafe' }];
  if (!handsOn) return [];
  if (!check) return [{ code: 'hands-on-missing' }];
  if (at - check.observedAt > recentDays * DAY) return [{ code: 'hands-on-old', days: recentDays }];
  return handsOn
    .filter(({ id, pass }) => (check.items.find((item) => item.id === id)?.score ?? -1) < pass)
    .map(({ id }) => ({ code: 'hands-on-below', item: id }));
}
