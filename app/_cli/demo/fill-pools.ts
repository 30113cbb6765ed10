import { database } from '@/app/_server/database';
import { fillPool } from '@/app/_server/pool/fill';
import { caseTask } from '@/app/_server/pool/make-task';
import { randomId } from '@/app/_server/random-id';
import { addingPoolTask } from '@/db/queries/pool-tasks';
import { together } from '@/db/together';
import type { CaseLadder } from './case-ladder';

/** A case takes some hundred milliseconds to certify, a question some ten; what runs out is drawn on the spot. */
const CASES = 12;
const QUESTIONS = 120;

/** Fills both pools: that of practice with the cases that were read out to the class, which are certified already. */
export async function fillPools(ladder: CaseLadder, now: Date): Promise<void> {
  const db = database();
  const known = ladder
    .readOut()
    .map(({ theCase, certificate }) =>
      caseTask({ case: theCase, certificate }, { id: randomId(), use: 'practice', at: now }),
    );
  await together(
    db,
    known.map((task) => addingPoolTask(db, task)),
  );
  await fillPool('practice', { cases: 0, questions: QUESTIONS }, now);
  await fillPool('assessed', { cases: CASES, questions: QUESTIONS }, now);
}
