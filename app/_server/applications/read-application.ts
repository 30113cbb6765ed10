import { findApplication, type NamedApplication } from '@/db/queries/applications';
import { listTrainingParts } from '@/db/queries/part-in-training';
import type { Standing } from '@/lib/readiness/intake-outcome';
import { type Conflict, conflictsOf } from '@/lib/readiness/may-decide';
import { readSchemeStanding } from '../certificates/read-scheme-standing';
import { database } from '../database';
import { settleEvidence } from '../evidence/settle';

export interface ReadApplication {
  application: NamedApplication;
  /** Under the version that was applied for; undefined where its role profile is not there any more. */
  standing: Standing | undefined;
  /** What keeps the reader from deciding. */
  conflicts: readonly Conflict[];
}

/** An application with what its evidence says now, for somebody who may have to decide on it. */
export async function readApplication(
  { organizationId, applicationId, personId }: Record<'organizationId' | 'applicationId' | 'personId', string>,
  now: Date,
): Promise<ReadApplication | undefined> {
  const application = await findApplication(database(), organizationId, applicationId);
  if (!application) return undefined;
  const { learnerId, scheme } = application;
  await settleEvidence(database(), { organizationId, learnerId });
  const parts = await listTrainingParts(database(), { organizationId, personId, learnerId });
  return {
    application,
    standing: await readSchemeStanding({ organizationId, learnerId, scheme }, now),
    conflicts: conflictsOf({ personId, candidateId: learnerId }, parts),
  };
}
