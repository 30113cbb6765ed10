import type { Case } from '@/lib/cases/case';
import { seedFromWord } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import type { Catalogue } from '@/lib/catalogue';
import type { StoredAct } from '@/lib/grading/acts';
import { type KnownOfCase, knownOf } from '@/lib/grading/grade-attempt';

/** A case on the bench, with what somebody who knows the trade by heart could work out about it. */
export interface Job extends KnownOfCase {
  theCase: Case;
  catalogue: Catalogue;
}

/** A simulated learner: from a case to the acts of a whole attempt. The same case gives the same acts. */
export interface Policy {
  id: string;
  work(job: Job): StoredAct[];
}

export interface DrawOptions {
  count: number;
  /** Names the draws: the same word gives the same cases. */
  word: string;
  hardest: boolean;
}

/** Plain or hardest cases as the generator draws them, over all rigs in turn. */
export function* drawnCases({ word, hardest }: Omit<DrawOptions, 'count'>, catalogue: Catalogue): Generator<Case> {
  const rigs = [...catalogue.rigs.keys()];
  for (let n = 0; ; n++) {
    const rig = rigs[n % rigs.length] ?? '';
    yield caseFromSeed({ rig, seed: seedFromWord(`${word}-${n}`), ...(hardest && { hardest: true }) }, catalogue);
  }
}

/** Those that their checks settle, as learners are given them. */
export function* certifiedJobs(options: DrawOptions, catalogue: Catalogue): Generator<Job> {
  let left = options.count;
  for (const theCase of drawnCases(options, catalogue)) {
    if (left === 0) return;
    const known = knownOf(theCase, catalogue);
    if (!known.certificate.settled) continue;
    left--;
    yield { theCase, catalogue, ...known };
  }
}
