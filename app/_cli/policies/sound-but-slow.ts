import { beliefAtStart, updateBelief } from '@/lib/diagnosis/belief';
import { readingsOf, SETTLED } from '@/lib/diagnosis/expert-route';
import { hookUpKey, nextChecks, type RouteStep } from '@/lib/diagnosis/next-check';
import { byRepair } from '@/lib/diagnosis/shares';
import type { Policy } from './job';
import { Notebook } from './notebook';
import { soundCall } from './sound-call';

/** Readings after which even a patient shop has had enough. */
const MOST_READINGS = 20;
/** A check that tells less than this, in nats, is not worth anybody's while. */
const NOTHING_TOLD = 2e-3;

/**
 * Judges like the expert, but always makes a middling check: half of those that would tell anything tell more a minute. At
 * last the part itself is measured, as the expert does.
 */
export const soundButSlow: Policy = {
  id: 'sound-but-slow',
  work(job) {
    const notebook = new Notebook(job);
    const done = new Set<string>();
    let belief = beliefAtStart(job.particles);
    const make = (step: RouteStep) => {
      const reading = notebook.read(step);
      notebook.judge(reading);
      const seen = readingsOf(job.catalogue, reading, reading.shown);
      belief = seen.reduce((before, one) => updateBelief(before, job.particles, one), belief);
      done.add(hookUpKey(step.check, step.condition));
    };
    while (done.size < MOST_READINGS && Math.max(...byRepair(job.particles, belief).values()) < SETTLED) {
      const open = nextChecks(job.particles, belief, done).filter(({ gain }) => gain >= NOTHING_TOLD);
      const middling = open[Math.floor(open.length / 2)];
      if (!middling) break;
      make(middling);
    }
    const proof = job.certificate.route.steps.at(-1);
    if (proof && !done.has(hookUpKey(proof.check, proof.condition))) make(proof);
    return notebook.call(soundCall(job, notebook, belief));
  },
};
