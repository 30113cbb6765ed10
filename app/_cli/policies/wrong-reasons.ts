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

function wrongReason(job: Job, right: FindingAct): FindingAct {
  const comparison = comparisons.find((other) => other !== right.comparison) ?? right.comparison;
  return { ...right, comparison, ...anotherLine(job, right), ...areasTurnedRound(right) };
}

/** The first line of the sheet that is not the one that holds. */
export function anotherLine({ theCase }: Job, right: FindingAct): Pick<FindingAct, 'limit'> {
  return { limit: theCase.rig.limits.find(({ id }) => id !== right.limit)?.id ?? null };
}

/** Clears what is suspect, and suspects everything else. */
export function areasTurnedRound({ suspects }: FindingAct): Pick<FindingAct, 'clears' | 'suspects'> {
  return { clears: suspects, suspects: areas.filter((area) => !suspects.includes(area)) };
}
