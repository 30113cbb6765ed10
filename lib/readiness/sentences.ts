import type { Change } from './changes-soon';
import type { Standing } from './intake-outcome';
import { type Missing, missingTopics } from './missing';
import type { RoleProfile } from './profile';
import { DAY } from './standing';

/** What somebody may be trusted with, and how sure that is. */
export type Trust =
  /** Ready; of the topic that is least sure, the chance. */
  | { code: 'ready'; topic: string; chance: number }
  /** At least one topic is below its line, or the work was not safe. */
  | { code: 'not-yet'; weak: number; of: number; unsafe: boolean }
  | { code: 'not-enough-evidence'; shown: number; of: number };

/** What is missing: topics by what they are short of, and what the safety of the work is short of. */
export interface Lack {
  topics: readonly { missing: Missing; topics: readonly string[] }[];
  /** Safety-critical acts that are still within sight. */
  unsafe: number;
  /** Cases without which nothing is said of safety. */
  cases: number;
}

/** What time alone takes away next, within so many days. */
export type Soon =
  | { code: 'nothing'; days: number }
  | { code: 'topic'; change: Change; others: number }
  | { code: 'sign-off'; at: number };

/** Three things to say of a person in a role, as codes. */
export interface Sentences {
  trust: Trust;
  lack: Lack;
  soon: Soon;
}

export function sentencesOf(
  standing: Standing,
  profile: RoleProfile,
  soon: { changes: readonly Change[]; signOffEndsAt: number | null; horizonDays: number },
): Sentences {
  return { trust: trustOf(standing), lack: lackOf(standing, profile), soon: soonOf(standing, soon) };
}

function trustOf({ decision, topics, safety }: Standing): Trust {
  const of = topics.length;
  if (decision === 'ready') {
    const least = topics.reduce((low, one) => (one.chance - one.confidence < low.chance - low.confidence ? one : low));
    return { code: 'ready', topic: least.topic, chance: least.chance };
  }
  const count = (wanted: string) => topics.filter((topic) => topic.decision === wanted).length;
  return decision === 'not-yet'
    ? { code: 'not-yet', weak: count('not-yet'), of, unsafe: safety.code === 'unsafe' }
    : { code: 'not-enough-evidence', shown: count('ready'), of };
}

function lackOf(standing: Standing, profile: RoleProfile): Lack {
  const groups = new Map<Missing, string[]>();
  for (const { standing: topic, missing } of missingTopics(standing, profile))
    groups.set(missing, [...(groups.get(missing) ?? []), topic.topic]);
  const { code, cases, events } = standing.safety;
  return {
    topics: [...groups].map(([missing, topics]) => ({ missing, topics })),
    unsafe: code === 'unsafe' ? events : 0,
    cases: code === 'too-few-cases' ? profile.safety.atLeast - cases : 0,
  };
}

function soonOf({ at }: Standing, { changes, signOffEndsAt, horizonDays }: Parameters<typeof sentencesOf>[2]): Soon {
  const [change, ...others] = changes;
  const ends = signOffEndsAt !== null && signOffEndsAt <= at + horizonDays * DAY ? signOffEndsAt : null;
  if (ends !== null && (!change || ends <= change.at)) return { code: 'sign-off', at: ends };
  return change ? { code: 'topic', change, others: others.length } : { code: 'nothing', days: horizonDays };
}
