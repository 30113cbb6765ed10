import { appliesTo } from '@/lib/faults/apply-cause';
import { gradeAttempt } from '@/lib/grading/grade-attempt';
import { aRig, catalogue } from '../support/bench-rig';
import { aCase, aWorkedAttempt } from '../support/worked-attempt';
import { rounds, type Spread, spreadOf } from './spread';

const ROUNDS = 10;

function onTern13(): string[] {
  return [...catalogue.causes.values()].filter((cause) => appliesTo(aRig(), cause)).map(({ id }) => id);
}

/** Milliseconds to grade one attempt of several readings and findings, over one case of every cause. */
export function measureGrading(): Spread {
  const attempts = onTern13().map((cause) => {
    const theCase = aCase({ cause });
    return { theCase, acts: aWorkedAttempt(theCase) };
  });
  const times = rounds(ROUNDS, () => {
    for (const { theCase, acts } of attempts) gradeAttempt(theCase, catalogue, acts);
  });
  return spreadOf(times.map((time) => time / attempts.length));
}
