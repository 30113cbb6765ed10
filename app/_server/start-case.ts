import { randomBytes } from 'node:crypto';
import { type Attempt, findStarted } from '@/db/queries/attempts';
import type { CaseSpec } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { certify } from '@/lib/diagnosis/certificate';
import { findCase, type UnmetWish } from '@/lib/wishes/find-case';
import type { Wishes } from '@/lib/wishes/wishes';
import { catalogue } from './catalogue';
import { database } from './database';
import type { Desk } from './permit';
import { storeAttempt } from './store-attempt';

/** Who starts, by which key, and whether hints are wished for. */
export interface Starter {
  desk: Desk;
  /** Made by the client: the same key again finds the attempt that it started. */
  key: string;
  coached: boolean;
}

/** Starts an attempt at a case nobody has seen, drawn now as wished. */
export async function startAsWished({ desk, key, coached }: Starter, wishes: Wishes): Promise<Attempt | UnmetWish> {
  const started = await findStarted(database(), desk.learnerId, key);
  if (started) return started;
  const found = findCase(wishes, randomBytes(16).toString('hex'), catalogue());
  return 'unmet' in found ? found : storeAttempt(desk, key, { ...found, coached });
}

/** Starts an attempt at a chosen case, where its checks settle it. */
export async function startChosen(
  { desk, key, coached }: Starter,
  spec: CaseSpec,
): Promise<Attempt | { error: 'case-not-settled' }> {
  const started = await findStarted(database(), desk.learnerId, key);
  if (started) return started;
  const theCase = caseFromSeed(spec, catalogue());
  const certificate = certify(theCase, catalogue());
  if (!certificate.settled) return { error: 'case-not-settled' };
  return storeAttempt(desk, key, { case: theCase, certificate, coached });
}
