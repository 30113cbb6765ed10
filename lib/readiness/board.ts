import type { Decision } from '../competency/decision';
import type { HalfLife } from '../competency/tally';
import { type Change, changesSoon } from './changes-soon';
import type { SafetyStanding, Standing } from './intake-outcome';
import { type Missing, missingOf } from './missing';
import { evidenceOn, type PersonEvidence } from './person-evidence';
import type { RoleProfile } from './profile';
import { DAY, standingOf } from './standing';

/** What is looked ahead for what time alone changes, days. */
export const HORIZON_DAYS = 90;

/** What the evidence says of somebody on one topic. */
export interface BoardCell {
  decision: Decision;
  /** What it is short of; undefined for what is ready. */
  missing?: Missing;
  chance: number;
  responses: number;
  cases: number;
  /** Days until time alone changes the decision; null for none within sight. */
  changesIn: number | null;
}

export interface BoardPerson {
  id: string;
  name: string;
  classes: readonly string[];
  decision: Decision;
  safety: SafetyStanding['code'];
  /** Days until the sign-off ends, 0 on its last; null without one that stands. */
  signedFor: number | null;
  /** One for each topic of the profile, in its order. */
  cells: readonly BoardCell[];
}

/** Somebody as the board is made from. */
export interface OnBoard {
  id: string;
  name: string;
  classes: readonly string[];
  evidence: PersonEvidence;
  /** Of the sign-off that stands, ms; null without one. */
  signOffEndsAt: number | null;
}

/** How everybody stands in a role. */
export function boardOf(
  people: readonly OnBoard[],
  profile: RoleProfile,
  halfLifeDays: HalfLife,
  at: number,
): BoardPerson[] {
  return people.map(({ evidence, signOffEndsAt, ...person }) => {
    const { standing, changes } = standingAndChanges(evidence, profile, halfLifeDays, at);
    return {
      ...person,
      decision: standing.decision,
      safety: standing.safety.code,
      signedFor: signOffEndsAt === null ? null : daysUntil(signOffEndsAt, at),
      cells: standing.topics.map((topic) => {
        const change = changes.find((one) => one.topic === topic.topic);
        const missing = missingOf(topic, profile, at);
        return {
          decision: topic.decision,
          ...(missing && { missing }),
          chance: topic.chance,
          responses: topic.responses,
          cases: topic.cases,
          changesIn: change ? daysUntil(change.at, at) : null,
        };
      }),
    };
  });
}

/** What somebody's evidence says of them in a role at a moment, and what of it time alone changes soon. */
export function standingAndChanges(
  evidence: PersonEvidence,
  profile: RoleProfile,
  halfLifeDays: HalfLife,
  at: number,
): { standing: Standing; changes: Change[] } {
  const topics = evidenceOn(evidence, profile.topics, halfLifeDays, at);
  const standing = standingOf({ profile, topics, safety: evidence.safety, at });
  return {
    standing,
    changes: changesSoon(standing, profile, { tallies: evidence.tallies, halfLifeDays }, HORIZON_DAYS),
  };
}

/** Whole days that are still to come. */
function daysUntil(then: number, at: number): number {
  return Math.max(0, Math.floor((then - at) / DAY));
}
