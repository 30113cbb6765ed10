import { type Belief, beliefAtStart, updateBelief } from '@/lib/diagnosis/belief';
import { readingsOf, SETTLED } from '@/lib/diagnosis/expert-route';
import { type CheckWorth, hookUpKey, NOTHING_TOLD, nextChecks, type RouteStep } from '@/lib/diagnosis/next-check';
import { byRepair } from '@/lib/diagnosis/shares';
import type { Job } from './job';
import type { Change, Notebook } from './notebook';

/** What somebody has looked at on a job, and what it leads to; what no line of the limit sheet judges is weighed, too. */
export class Looking {
  belief: Belief;
  private readonly done = new Set<string>();

  constructor(
    private readonly job: Job,
    private readonly notebook: Notebook,
  ) {
    this.belief = beliefAtStart(job.particles);
  }

  /** How many hook-ups were made. */
  get count(): number {
    return this.done.size;
  }

  has({ check, condition }: Pick<RouteStep, 'check' | 'condition'>): boolean {
    return this.done.has(hookUpKey(check, condition));
  }

  settled(): boolean {
    return Math.max(...byRepair(this.job.particles, this.belief).values()) >= SETTLED;
  }

  /** Checks still open that would tell anything, best first. */
  worthwhile(): CheckWorth[] {
    return nextChecks(this.job.particles, this.belief, this.done).filter(({ gain }) => gain >= NOTHING_TOLD);
  }

  /** Hooks up, reads and writes down what there is to judge. */
  make(step: RouteStep, change?: Change): void {
    const reading = this.notebook.read(step);
    this.notebook.judge(reading, change);
    const seen = readingsOf(this.job.catalogue, reading, reading.shown);
    this.belief = seen.reduce((before, one) => updateBelief(before, this.job.particles, one), this.belief);
    this.done.add(hookUpKey(step.check, step.condition));
  }
}
