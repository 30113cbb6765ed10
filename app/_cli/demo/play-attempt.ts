import { decideFinding } from '@/app/_server/decide-finding';
import { decideReading } from '@/app/_server/decide-reading';
import { makeCall } from '@/app/_server/make-call';
import type { Desk } from '@/app/_server/permit';
import { storeAttempt } from '@/app/_server/store-attempt';
import { takeAct } from '@/app/_server/take-act';
import type { StoredAct } from '@/lib/grading/acts';
import type { RandomStream } from '@/lib/random';
import type { Job } from '../policies/job';
import { minutesAfter } from './working-days';

/** Minutes that thinking over what to write down takes. */
const THOUGHT = [1, 4] as const;

export interface Play {
  /** The same again plays nothing new. */
  key: string;
  job: Job;
  /** What is done, in order. Without a call, the attempt stays open. */
  acts: readonly StoredAct[];
  startedAt: Date;
  /** How much of the minutes at the vehicle passes; all of them where it is left out. */
  pace?: number;
}

/** Plays an attempt through the doors that a learner's acts come in by, at a learner's pace. Returns the attempt's id. */
export async function playAttempt(
  desk: Desk,
  { key, job, acts, startedAt }: Play,
  draw: RandomStream,
): Promise<string> {
  const { theCase, certificate } = job;
  const { id } = await storeAttempt(desk, key, { case: theCase, certificate, demo: true, at: startedAt });
  await playActs(desk, id, { key, job, acts, startedAt }, draw);
  return id;
}

/** Does what is done in an attempt that is there. @returns when the last act was done. */
export async function playActs(
  desk: Desk,
  attemptId: string,
  { key, job, acts, startedAt, pace = 1 }: Play,
  draw: RandomStream,
): Promise<Date> {
  let at = startedAt;
  for (const act of acts) {
    at = minutesAfter(at, pace * minutesFor(act, job, draw));
    done(await playAct({ desk, attemptId, key: `${key}-${act.seq}`, at }, job, act));
  }
  return at;
}

/** One act, of whom, when. */
interface Doing {
  desk: Desk;
  attemptId: string;
  key: string;
  at: Date;
}

async function playAct(doing: Doing, job: Job, act: StoredAct): Promise<object> {
  const { seq: _, ...body } = act;
  switch (body.kind) {
    case 'reading':
      return takeAct({ ...doing, decide: ({ acts }) => decideReading(job.theCase, job.catalogue, acts, body) });
    case 'finding':
      return takeAct({
        ...doing,
        decide: ({ acts }) => decideFinding(job.theCase.rig, job.catalogue, acts, body),
      });
    case 'call':
      return makeCall(doing.desk, doing.attemptId, doing.key, body, { at: doing.at, known: job });
    case 'hint':
      throw new RangeError('Nobody of a demo is coached');
  }
}

function minutesFor(act: StoredAct, { catalogue }: Job, draw: RandomStream): number {
  const looking = act.kind === 'reading' ? (catalogue.checks.get(act.check)?.minutes ?? 0) : 0;
  return looking + draw.between(...THOUGHT);
}

/** Throws where what the demo does was refused. */
function done(result: object): void {
  if ('error' in result) throw new Error(`The demo does not play: ${String(result.error)}`);
}
