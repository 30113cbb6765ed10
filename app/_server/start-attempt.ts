import { randomBytes } from 'node:crypto';
import { type Attempt, recordAttempt } from '@/db/queries/attempts';
import type { CaseSpec } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { catalogue } from './catalogue';
import { database } from './database';

/**
 * Starts a learner's attempt at a case. The same key again returns the attempt that it started.
 *
 * @throws SolveError when the case cannot be computed, before anything is stored.
 */
export async function startAttempt(learnerId: string, key: string, spec: CaseSpec, demo = false): Promise<Attempt> {
  const { code, generatorVersion, contentHash } = caseFromSeed(spec, catalogue());
  const attempt = await recordAttempt(database(), {
    id: randomBytes(10).toString('hex'),
    learnerId,
    key,
    caseCode: code,
    generatorVersion,
    contentHash,
    demo,
    createdAt: new Date(),
  });
  if (!attempt) throw new Error('The attempt was neither stored nor found');
  return attempt;
}
