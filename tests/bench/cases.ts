import { seedFromWord } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { describeCase } from '@/lib/cases/describe-case';
import { catalogue } from '../support/bench-rig';
import { rounds, type Spread, spreadOf } from './spread';

const CASES = 100;
const ROUNDS = 40;

/** Milliseconds per case on one core, each drawn from its seed with every reading in every condition. */
export function measureCases(): Spread {
  const times = rounds(ROUNDS, (round) => {
    for (let index = 0; index < CASES; index++) {
      const seed = seedFromWord(`bench ${round} ${index}`);
      describeCase(caseFromSeed({ rig: 'tern-13', seed }, catalogue), catalogue);
    }
  });
  return spreadOf(times.map((time) => time / CASES));
}
