import { decideAll, decideTopic } from '../competency/decide';
import type { Decision } from '../competency/decision';
import { GRID } from '../competency/grid';
import {
  chanceAtOrAbove,
  intervalOf,
  meanOf,
  neutralPrior,
  type Posterior,
  posteriorFrom,
} from '../competency/posterior';
import type { SafetyStanding, Standing, TopicStanding } from './intake-outcome';
import type { RequiredTopic, RoleProfile } from './profile';

/** What the evidence on one topic comes to at the moment it is looked at. */
export interface TopicEvidence {
  posterior: Posterior;
  /** Responses that count, and cases among them. */
  responses: number;
  cases: number;
  /** Of the newest response, ms; null without any. */
  newestAt: number | null;
}

/** Somebody's newest cases with the safety-critical acts in each, the newest first. */
export type RecentCases = readonly { events: number }[];

export interface Shown {
  profile: RoleProfile;
  /** By topic; one that is not there was not tested. */
  topics: ReadonlyMap<string, TopicEvidence>;
  safety: RecentCases;
  /** When it is looked at, ms. */
  at: number;
}

/** Share of the chance that an interval holds. */
const INTERVAL = 0.9;

/**
 * What somebody's evidence says of them in a role. Every required topic has to be shown, and the work to be safe: a strength
 * elsewhere makes up for nothing. Evidence that is too old decides nothing, neither way.
 */
export function standingOf({ profile, topics, safety, at }: Shown): Standing {
  const each = profile.topics.map((required) =>
    topicStanding(required, topics.get(required.topic) ?? untested, profile, at),
  );
  const gate = safetyStanding(profile, safety);
  return {
    profileId: profile.id,
    profileVersion: profile.version,
    decision: decideAll([...each.map(({ decision }) => decision), safetyDecisions[gate.code]]),
    topics: each,
    safety: gate,
    at,
  };
}

/** Whether evidence is older than a profile lets count. */
export function isTooOld(
  newestAt: number | null,
  { recentDays }: Pick<RoleProfile, 'recentDays'>,
  at: number,
): boolean {
  return newestAt !== null && at - newestAt > recentDays * DAY;
}

export const DAY = 86_400_000;

const untested: TopicEvidence = {
  posterior: posteriorFrom(neutralPrior, new Float64Array(GRID.length)),
  responses: 0,
  cases: 0,
  newestAt: null,
};

function topicStanding(
  { topic, cut, confidence }: RequiredTopic,
  { posterior, responses, cases, newestAt }: TopicEvidence,
  profile: RoleProfile,
  at: number,
): TopicStanding {
  const chance = chanceAtOrAbove(posterior, cut);
  const { low, high } = intervalOf(posterior, INTERVAL);
  const { refuse, minimum } = profile;
  const decision = isTooOld(newestAt, profile, at)
    ? 'not-enough-evidence'
    : decideTopic({ chance, count: responses }, { confidence, refuse, minimum });
  return {
    topic,
    cut,
    confidence,
    decision,
    chance,
    mean: meanOf(posterior),
    interval: [low, high],
    responses,
    cases,
    newestAt,
  };
}

const safetyDecisions: Record<SafetyStanding['code'], Decision> = {
  clean: 'ready',
  unsafe: 'not-yet',
  'too-few-cases': 'not-enough-evidence',
};

function safetyStanding({ safety: { clean, atLeast } }: RoleProfile, recent: RecentCases): SafetyStanding {
  const looked = recent.slice(0, clean);
  const events = looked.reduce((sum, one) => sum + one.events, 0);
  const code = events > 0 ? 'unsafe' : looked.length < atLeast ? 'too-few-cases' : 'clean';
  return { code, cases: looked.length, events };
}
