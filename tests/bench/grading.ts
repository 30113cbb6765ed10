import { gradeAttempt } from '@/lib/grading/grade-attempt';
import { catalogue } from '../support/bench-rig';
import { aCase, aWorkedAttempt } from '../support/worked-attempt';
import { rounds, type Spread, spreadOf } from './spread';

const ROUNDS = 10;

/** Milliseconds to grade one attempt of several readings and findings, over one case of every cause. */
export function measureGrading(): Spread {
  const attempts = [...catalogue.causes.keys()].map((cause) => {
    const theCase = aCase({ cause });
    return { theCase, acts: aWorkedAttempt(theCase) };
  });
  const times = rounds(ROUNDS, () => {
    for (const { theCase, acts } of attempts) gradeAttempt(theCase, catalogue, acts);
  });
  return spreadOf(times.map((time) => time / attempts.length));
}
