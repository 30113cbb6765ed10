import type { NewAttempt } from '@/db/queries/attempts';
import type { PoolTask } from '@/db/queries/pool-tasks';
import type { Features } from '@/lib/diagnosis/difficulty';
import { randomId } from '../random-id';

/** An attempt at a case of the pool, under the versions that it was worked out under. */
export function attemptOfTask(
  task: PoolTask,
  of: Pick<NewAttempt, 'learnerId' | 'organizationId' | 'key' | 'createdAt'> & { demo?: boolean },
): NewAttempt {
  return {
    ...of,
    id: randomId(),
    caseCode: task.caseCode ?? '',
    generatorVersion: task.generatorVersion,
    contentHash: task.contentHash,
    difficulty: task.difficulty,
    features: task.features as Features,
    coached: false,
  };
}
