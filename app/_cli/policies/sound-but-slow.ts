import type { Policy } from './job';
import { Looking } from './looking';
import { Notebook } from './notebook';
import { soundCall } from './sound-call';

/** Readings after which even a patient shop has had enough. */
const MOST_READINGS = 20;

/**
 * Judges like the expert, but always makes a middling check: half of those that would tell anything tell more a minute. At
 * last the part itself is measured, as the expert does.
 */
export const soundButSlow: Policy = {
  id: 'sound-but-slow',
  work(job) {
    const notebook = new Notebook(job);
    const looking = new Looking(job, notebook);
    while (looking.count < MOST_READINGS && !looking.settled()) {
      const open = looking.worthwhile();
      const middling = open[Math.floor(open.length / 2)];
      if (!middling) break;
      looking.make(middling);
    }
    const proof = job.certificate.route.steps.at(-1);
    if (proof && !looking.has(proof)) looking.make(proof);
    return notebook.call(soundCall(job, notebook, looking.belief));
  },
};
