import type { Desk } from '@/app/_server/permit';
import { randomStream } from '@/lib/random';
import { apprentice } from '../policies/apprentice';
import { grown } from '../policies/make-up';
import type { CaseLadder } from './case-ladder';
import type { DemoApprentice } from './demo-content';
import { handPlayed } from './hand-played';
import { type Play, playAttempt } from './play-attempt';
import { morningsOn, workingDays } from './working-days';

/** An apprentice with the desk where the history is to be made. */
export interface DemoLearner extends DemoApprentice {
  desk: Desk;
  /** Place in the list of the class. */
  index: number;
}

/** Makes the history of one apprentice up to yesterday, the same every time but for the dates. Returns how many attempts. */
export async function playHistory(learner: DemoLearner, ladder: CaseLadder, now: Date): Promise<number> {
  const draw = randomStream(learner.handle, 'demo history');
  const plays = [...playsOf(learner, ladder)];
  const mornings = morningsOn(workingDays(now, learner.weeks), plays.length, draw);
  for (const [index, play] of plays.entries())
    await playAttempt(learner.desk, { ...play, startedAt: mornings[index] ?? now }, draw);
  return plays.length;
}

type Undated = Omit<Play, 'startedAt'>;

function* playsOf({ handle, index, makeUp, attempts, open, ...learner }: DemoLearner, ladder: CaseLadder) {
  const count = attempts + Number(open);
  for (let n = 0; n < count; n++) {
    const job = ladder.caseFor(index, n, count);
    const acts = apprentice(grown(makeUp, n), handle).work(job);
    yield { key: `demo-${n}`, job, acts: n < attempts ? acts : firstHalf(acts) } satisfies Undated;
  }
  if (!learner.handPlayed) return;
  for (const { name, job, acts } of handPlayed(ladder.catalogue)) yield { key: name, job, acts } satisfies Undated;
}

function firstHalf<T>(acts: readonly T[]): readonly T[] {
  return acts.slice(0, Math.ceil(acts.length / 2));
}
