import { decideAll } from '../competency/decide';
import type { Evidence, EvidencePurpose } from '../competency/evidence';
import { standingRevisions } from '../competency/revisions';
import { posteriorAt, tallyOf } from '../competency/tally';
import type { Standing } from './intake-outcome';
import type { RoleProfile } from './profile';
import type { Scheme } from './scheme';
import { DAY, type RecentCases, standingOf, type TopicEvidence } from './standing';

/** What is shown to be judged. Practice is for learning. */
const COUNTED: ReadonlySet<EvidencePurpose> = new Set(['assessed', 'intake', 'observed']);

export interface Judged {
  scheme: Scheme;
  /** The scheme's, for how safe the work must have been. */
  profile: RoleProfile;
  /** All that is logged of the person, every revision. */
  evidence: readonly Evidence[];
  /** When it is decided, ms. */
  at: number;
}

/**
 * What somebody's evidence comes to under a scheme: every topic of its blueprint, by the scheme's line and confidence. Only
 * responses of its window that were made to be judged count, each in full and without fading; a task that was met before,
 * in practice too, counts the first time alone.
 */
export function standingUnderScheme({ scheme, profile, evidence, at }: Judged): Standing {
  const counted = countedUnder(scheme, evidence, at);
  const safety = recentCases(counted);
  const each = scheme.blueprint.map(({ topic, atLeast }) => {
    const topics = new Map([[topic, evidenceOn(topic, counted, at)]]);
    return standingOf({ profile: ruleFor(scheme, profile, { topic, atLeast }), topics, safety, at });
  });
  return {
    profileId: scheme.profile,
    profileVersion: profile.version,
    decision: decideAll(each.map(({ decision }) => decision)),
    topics: each.flatMap(({ topics }) => topics),
    // Of the same cases for every topic.
    safety: each[0]?.safety ?? { code: 'too-few-cases', cases: 0, events: 0 },
    at,
  };
}

function ruleFor(
  { cut, confidence, refuse, windowDays }: Scheme,
  profile: RoleProfile,
  { topic, atLeast }: { topic: string; atLeast: number },
): RoleProfile {
  const topics = [{ topic, cut: cut.ability, confidence }];
  return { ...profile, topics, refuse, minimum: atLeast, recentDays: windowDays };
}

function countedUnder({ windowDays }: Scheme, evidence: readonly Evidence[], at: number): Evidence[] {
  const standing = standingRevisions(evidence).filter(({ counts }) => counts);
  const first = firstMet(standing);
  return standing.filter(
    (one) =>
      COUNTED.has(one.purpose) &&
      first.get(one.exposure)?.work === one.work &&
      one.at <= at &&
      at - one.at <= windowDays * DAY,
  );
}

/** Of each task the work at which it was met first. */
function firstMet(evidence: readonly Evidence[]): Map<string, Evidence> {
  const first = new Map<string, Evidence>();
  for (const one of evidence) {
    const before = first.get(one.exposure);
    if (!before || one.at < before.at) first.set(one.exposure, one);
  }
  return first;
}

function evidenceOn(topic: string, counted: readonly Evidence[], at: number): TopicEvidence {
  const on = counted.filter((one) => one.topic === topic);
  const tally = tallyOf(
    on.map(({ at: given, model, score }) => ({ at: given, model, score, weight: 1 })),
    null,
  );
  return {
    posterior: posteriorAt(tally, at, null),
    responses: on.length,
    cases: on.filter(({ source }) => source === 'case').length,
    newestAt: on.length > 0 ? tally.at : null,
  };
}

/** The newest first. A case has a row a topic, each of which tells of the same acts. */
function recentCases(counted: readonly Evidence[]): RecentCases {
  const cases = new Map<string, { at: number; events: number }>();
  for (const { source, work, at, safetyEvents } of counted) {
    if (source !== 'case') continue;
    cases.set(work, { at, events: Math.max(safetyEvents, cases.get(work)?.events ?? 0) });
  }
  return [...cases.values()].toSorted((one, other) => other.at - one.at);
}
