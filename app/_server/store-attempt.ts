import { randomBytes } from 'node:crypto';
import { type Attempt, recordAttempt } from '@/db/queries/attempts';
import type { Case } from '@/lib/cases/case';
import { mayBeCoached } from '@/lib/coaching/may-be-coached';
import type { Certificate } from '@/lib/diagnosis/certificate';
import { database } from './database';
import type { Desk } from './permit';

export interface NewStart {
  case: Case;
  certificate: Certificate;
  coached?: boolean;
  demo?: boolean;
  /** When it is started, if not now. */
  at?: Date;
}

/** Stores an attempt, or finds the one that the key has started. All attempts there are yet are made for practice. */
export async function storeAttempt(desk: Desk, key: string, start: NewStart): Promise<Attempt> {
  const { certificate, coached = false, demo = false, at = new Date() } = start;
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
    createdAt: at,
  });
  if (!attempt) throw new Error('The attempt was neither stored nor found');
  return attempt;
}
