import { decideCall } from '@/app/_server/decide-call';
import { decideFinding } from '@/app/_server/decide-finding';
import { performCheck } from '@/lib/cases/perform-check';
import { type Belief, beliefAtStart, updateBelief } from '@/lib/diagnosis/belief';
import { readingsOf } from '@/lib/diagnosis/expert-route';
import type { RouteStep } from '@/lib/diagnosis/next-check';
import type { Act, CallAct, FindingAct, ReadingAct, StoredAct } from '@/lib/grading/acts';
import type { Job } from './job';
import { soundFinding } from './sound-finding';

export type Numbered<T> = T & { seq: number };
/** What a policy makes of a finding that is right in every way. */
export type Change = (right: FindingAct) => FindingAct;

/**
 * The acts of an attempt while it is made, and the belief that its findings lead to. Acts go through the doors that a
 * learner's go through.
 */
export class Notebook {
  readonly acts: StoredAct[] = [];
  /** After every finding so far. */
  belief: Belief;

  constructor(private readonly job: Job) {
    this.belief = beliefAtStart(job.particles);
  }

  get readings(): Numbered<ReadingAct>[] {
    return this.acts.filter((act): act is Numbered<ReadingAct> => act.kind === 'reading');
  }

  /** Hooks up and reads. */
  read({ check, condition, instrument }: Omit<RouteStep, 'minutes'>): Numbered<ReadingAct> {
    const read = performCheck(this.job.theCase, this.job.catalogue, { check, condition, instrument });
    if ('error' in read) throw new RangeError(`${check} at ${condition} with ${instrument}: ${read.error}`);
    return this.add({ kind: 'reading', check, condition, instrument, shown: read.shown });
  }

  /** Writes a finding on every quantity that was measured and has a line of the limit sheet. */
  judge(reading: Numbered<ReadingAct>, change: Change = (right) => right): void {
    for (const seen of readingsOf(this.job.catalogue, reading, reading.shown)) {
      const after = updateBelief(this.belief, this.job.particles, seen);
      const finding = soundFinding(this.job, reading, seen, this.belief, after);
      if (!finding) continue;
      this.belief = after;
      this.find(change(finding));
    }
  }

  /** Writes a finding down. */
  find(finding: FindingAct): void {
    const decided = decideFinding(this.job.theCase.rig, this.job.catalogue, this.acts, finding);
    if ('error' in decided) throw new RangeError(`Finding on ${finding.quantity}: ${decided.error}`);
    this.add(decided.act);
  }

  /** Makes the call, which ends the attempt. */
  call({ kind: _, proof, also, restored = [], ...answer }: CallAct): StoredAct[] {
    const second = also && { cause: also.cause, repair: also.repair, ...also.proof };
    const choice = { ...answer, ...proof, restored, ...(second && { also: second }) };
    const decided = decideCall(this.job.theCase.rig, this.job.catalogue, choice);
    if ('error' in decided) throw new RangeError(`Call of ${answer.cause}: ${decided.error}`);
    this.add(decided.act);
    return this.acts;
  }

  private add<T extends Act>(act: T): Numbered<T> {
    const numbered = { ...act, seq: this.acts.length + 1 };
    this.acts.push(numbered);
    return numbered;
  }
}
