import { areas } from '@/lib/areas';
import { comparisons } from '@/lib/checks/verdict';
import type { FindingAct } from '@/lib/grading/acts';
import type { Job, Policy } from './job';
import { Notebook } from './notebook';
import { soundCall } from './sound-call';

/** The expert's route, dials, verdicts and call; but another line of the sheet, another comparison and the areas turned round. */
export const rightVerdictsWrongReasons: Policy = {
  id: 'right-verdicts-wrong-reasons',
  work(job) {
    const notebook = new Notebook(job);
    for (const step of job.certificate.route.steps) {
      notebook.judge(notebook.read(step), (right) => wrongReason(job, right));
    }
    return notebook.call(soundCall(job, notebook, job.certificate.route.belief));
  },
};

function wrongReason({ theCase }: Job, right: FindingAct): FindingAct {
  return {
    ...right,
    limit: theCase.rig.limits.find(({ id }) => id !== right.limit)?.id ?? null,
    comparison: comparisons.find((other) => other !== right.comparison) ?? right.comparison,
    clears: right.suspects,
    suspects: areas.filter((area) => !right.suspects.includes(area)),
  };
}
