import type { Db } from '@/db/client';
import { owingEvidence } from '@/db/queries/evidence-due';
import { findOrganization } from '@/db/queries/organizations';
import { listStale } from '@/db/queries/topic-states';
import { together } from '@/db/together';
import { STATE_RULES } from '@/lib/competency/states';
import { settingsFrom } from '../organization-settings';
import { settleEvidence } from './settle';

/**
 * Brings the states of people of an organisation up to date, for whoever then reads them from the tables: what is owed is
 * written first, and states that were made with another half-life or by other rules are made again.
 */
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
