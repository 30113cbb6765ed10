import type { Db } from '@/db/client';
import { listEvidence } from '@/db/queries/evidence';
import { findOrganization } from '@/db/queries/organizations';
import type { Evidence } from '@/lib/competency/evidence';
import { type TopicProgress, topicProgress } from '@/lib/competency/progress';
import { byTopic, weighed } from '@/lib/competency/states';
import { settingsFrom } from '../organization-settings';
import { listUntold } from '../turns/untold';
import { settleEvidence } from './settle';
import { listUnnamed } from './unnamed';
import { workOf } from './work-of';

interface Whose {
  organizationId: string;
  learnerId: string;
}

/** What somebody has shown, topic by topic; a topic that is not there was not tested. */
export async function readProgress(
  db: Db,
  { organizationId, learnerId }: Whose,
  { now, by }: { now: Date; by: 'learner' | 'staff' },
): Promise<ReadonlyMap<string, TopicProgress>> {
  await settleEvidence(db, { organizationId, learnerId });
  const whose = { organizationId, learnerId };
  const told = await (by === 'learner' ? listTold : listNamed)(db, whose, now);
  const { evidenceHalfLifeDays } = settingsFrom((await findOrganization(db, organizationId))?.settings);
  const progress = new Map<string, TopicProgress>();
  for (const [topic, responses] of byTopic(weighed(told))) {
    const one = topicProgress(topic, responses, evidenceHalfLifeDays, now.getTime());
    if (one) progress.set(topic, one);
  }
  return progress;
}

/** What somebody may know of their own log: tells nobody how work went of which nothing is told yet. */
export async function listTold(db: Db, whose: Whose, now: Date): Promise<Evidence[]> {
  return without(await listUntold(db, whose, now), await listEvidence(db, whose));
}

/** What others may know of somebody's log: no name stands beside work that is still marked without. */
async function listNamed(db: Db, whose: Whose, now: Date): Promise<Evidence[]> {
  return without(await listUnnamed(db, whose, now), await listEvidence(db, whose));
}

type Works = Record<'attempts' | 'sittings', { has(id: string): boolean }>;

function without({ attempts, sittings }: Works, logged: readonly Evidence[]): Evidence[] {
  return logged.filter(({ work }) => {
    const { kind, id } = workOf(work);
    return kind === 'attempt' ? !attempts.has(id) : kind === 'sitting' ? !sittings.has(id) : true;
  });
}
