import type { Db } from '@/db/client';
import { listEvidence } from '@/db/queries/evidence';
import {
  forgettingTopicStates,
  keepingSafetyState,
  keepingTopicStates,
  type TopicStateRow,
} from '@/db/queries/topic-states';
import type { Statement } from '@/db/together';
import type { Evidence } from '@/lib/competency/evidence';
import { recentCasesOf, STATE_RULES, statesOf, type TopicState } from '@/lib/competency/states';
import { toBytes } from '@/lib/competency/tally-bytes';

interface Whose {
  organizationId: string;
  learnerId: string;
}

interface Made {
  /** Topics whose states are made anew. */
  topics: readonly string[] | 'all';
  /** Revisions that come into the log with the states. */
  added: readonly Evidence[];
  halfLifeDays: number;
}

/** Keeps what somebody's log comes to, worked out from its first row to its last. */
export async function keepingStatesOf(
  db: Db,
  whose: Whose,
  { topics, added, halfLifeDays }: Made,
): Promise<Statement[]> {
  const all = topics === 'all';
  const logged = [...(await listEvidence(db, whose, all ? {} : { topics })), ...added];
  const states = statesOf(logged, halfLifeDays);
  const rows = [...states].map(([topic, state]) => rowOf(topic, state, halfLifeDays));
  const kept = all
    ? [forgettingTopicStates(db, whose), ...keepingTopicStates(db, whose, [...states.keys()], rows)]
    : keepingTopicStates(db, whose, topics, rows);
  if (!all && added.every(({ source }) => source === 'question')) return kept;
  const acts = all ? logged : [...(await listEvidence(db, whose, { notQuestions: true })), ...added];
  return [...kept, keepingSafetyState(db, { ...whose, recent: recentCasesOf(acts) })];
}

function rowOf(
  topic: string,
  { tally, cases }: TopicState,
  halfLifeDays: number,
): Omit<TopicStateRow, 'organizationId' | 'learnerId'> {
  const { at, sum, count, weight } = tally;
  return {
    topic,
    at: new Date(at),
    sum: Buffer.from(toBytes(sum)),
    count,
    weight,
    cases,
    halfLifeDays,
    rules: STATE_RULES,
  };
}
