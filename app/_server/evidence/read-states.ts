import type { Db } from '@/db/client';
import { owingEvidence } from '@/db/queries/evidence-due';
import { findOrganization } from '@/db/queries/organizations';
import {
  listSafetyStates,
  listStale,
  listTopicStates,
  type SafetyStateRow,
  type TopicStateRow,
} from '@/db/queries/topic-states';
import { together } from '@/db/together';
import { STATE_RULES } from '@/lib/competency/states';
import { posteriorAt } from '@/lib/competency/tally';
import { fromBytes } from '@/lib/competency/tally-bytes';
import type { TopicEvidence } from '@/lib/readiness/standing';
import { settingsFrom } from '../organization-settings';
import { settleEvidence } from './settle';

/** What one person's evidence comes to. */
export interface ReadStates {
  /** By topic; one that is not there was not tested. */
  topics: ReadonlyMap<string, TopicStateRow>;
  /** The newest cases first. */
  safety: SafetyStateRow['recent'];
}

export const nothingShown: ReadStates = { topics: new Map(), safety: [] };

/**
 * What people of an organisation have shown, by their ids, up to date: what is owed is written first, and states that were made
 * with another half-life or by other rules are made again. Who has shown nothing is not among them.
 */
export async function readStates(
  db: Db,
  organizationId: string,
  learnerIds?: readonly string[],
): Promise<Map<string, ReadStates>> {
  await freshenStates(db, organizationId, learnerIds);
  const states = await listTopicStates(db, organizationId, learnerIds);
  return byPerson(states, await listSafetyStates(db, organizationId, learnerIds));
}

/** Brings the states of people up to date, for whoever then reads them from the tables. */
export async function freshenStates(db: Db, organizationId: string, learnerIds?: readonly string[]): Promise<void> {
  const learnerId = learnerIds?.length === 1 ? learnerIds[0] : undefined;
  await settleEvidence(db, { organizationId, learnerId });
  const { evidenceHalfLifeDays } = settingsFrom((await findOrganization(db, organizationId))?.settings);
  const stale = await listStale(db, organizationId, { halfLifeDays: evidenceHalfLifeDays, rules: STATE_RULES });
  const asked = stale.filter((id) => !learnerIds || learnerIds.includes(id));
  for (const id of asked) await rebuildStates(db, { organizationId, learnerId: id });
}

/** Makes somebody's states anew from their whole log. */
export async function rebuildStates(db: Db, whose: { organizationId: string; learnerId: string }): Promise<void> {
  const work = `person ${whose.learnerId} at ${whose.organizationId}`;
  await together(db, [owingEvidence(db, { ...whose, work, since: new Date() })]);
  await settleEvidence(db, whose);
}

/** What a state comes to at some moment, as decisions ask for it. */
export function evidenceAt({ at, sum, count, weight, cases, halfLifeDays }: TopicStateRow, now: number): TopicEvidence {
  const tally = { at: at.getTime(), sum: fromBytes(sum), count, weight };
  return { posterior: posteriorAt(tally, now, halfLifeDays), responses: count, cases, newestAt: at.getTime() };
}

function byPerson(states: readonly TopicStateRow[], safety: readonly SafetyStateRow[]): Map<string, ReadStates> {
  const people = new Map<string, { topics: Map<string, TopicStateRow>; safety: SafetyStateRow['recent'] }>();
  const of = (learnerId: string) => {
    const known = people.get(learnerId);
    if (known) return known;
    const fresh = { topics: new Map<string, TopicStateRow>(), safety: [] };
    people.set(learnerId, fresh);
    return fresh;
  };
  for (const state of states) of(state.learnerId).topics.set(state.topic, state);
  for (const { learnerId, recent } of safety) of(learnerId).safety = recent;
  return people;
}
