import type { Db } from '@/db/client';
import { sittingQuestions, sittings } from '@/db/schema';
import { QUESTION_VERSION } from '@/lib/questions/question';
import { catalogue } from './bench-rig';

/** A drill of a learner's whose first question is a version that somebody wrote. */
export async function addDrillOn(
  db: Db,
  versionId: string,
  { id, learnerId, organizationId }: { id: string; learnerId: string; organizationId: string },
): Promise<void> {
  const at = new Date();
  const topics = ['filtration'];
  await db.insert(sittings).values({ id, learnerId, organizationId, key: id, mode: 'drill', topics, createdAt: at });
  await db.insert(sittingQuestions).values({
    sittingId: id,
    place: 1,
    writtenVersionId: versionId,
    seed: `seed of ${id}`,
    questionVersion: QUESTION_VERSION,
    questionHash: catalogue.questionHash,
    askedAt: at,
  });
}
