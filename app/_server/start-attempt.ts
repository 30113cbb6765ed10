import { randomBytes } from 'node:crypto';
import { type Attempt, recordAttempt } from '@/db/queries/attempts';
import type { Case } from '@/lib/cases/case';
import type { CaseSpec } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { mayBeCoached } from '@/lib/coaching/may-be-coached';
import { type Certificate, certify } from '@/lib/diagnosis/certificate';
import { catalogue } from './catalogue';
import { database } from './database';
import type { Desk } from './permit';

/**
 * Starts a learner's attempt at a case, whatever its certificate says. The same key again returns the attempt that it
 * started.
 *
 * @throws SolveError when the case cannot be computed, before anything is stored.
 */
export async function startAttempt(desk: Desk, key: string, spec: CaseSpec, demo = false): Promise<Attempt> {
  const theCase = caseFromSeed(spec, catalogue());
  return storeAttempt(desk, key, { case: theCase, certificate: certify(theCase, catalogue()), demo });
}

export interface NewStart {
  case: Case;
  certificate: Certificate;
  coached?: boolean;
  demo?: boolean;
}

/** Stores an attempt, or finds the one that the key has started. All attempts there are yet are made for practice. */
export async function storeAttempt(desk: Desk, key: string, start: NewStart): Promise<Attempt> {
  const { certificate, coached = false, demo = false } = start;
  const attempt = await recordAttempt(database(), {
    id: randomBytes(10).toString('hex'),
    learnerId: desk.learnerId,
    organizationId: desk.organizationId,
    key,
    caseCode: start.case.code,
    generatorVersion: start.case.generatorVersion,
    contentHash: start.case.contentHash,
    demo,
    difficulty: certificate.difficulty,
    features: certificate.features,
    coached: coached && mayBeCoached('practice'),
    createdAt: new Date(),
  });
  if (!attempt) throw new Error('The attempt was neither stored nor found');
  return attempt;
}
