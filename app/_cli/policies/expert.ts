import type { Policy } from './job';
import { Notebook } from './notebook';
import { soundCall } from './sound-call';

/** Follows the expert's route, reads and judges it right, and says of each area what belief says. */
export const expert: Policy = {
  id: 'expert',
  work(job) {
    const notebook = new Notebook(job);
    for (const step of job.certificate.route.steps) notebook.judge(notebook.read(step));
    return notebook.call(soundCall(job, notebook, job.certificate.route.belief));
  },
};
