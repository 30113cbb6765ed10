import { expect, test } from 'vitest';
import { expert } from '@/app/_cli/policies/expert';
import { certifiedJobs } from '@/app/_cli/policies/job';
import { evidenceOfCase } from '@/lib/competency/evidence-of-case';
import { expectedOfCase, secondsAtCase } from '@/lib/competency/expected-of-case';
import type { CallAct, ReadingAct, StoredAct } from '@/lib/grading/acts';
import { gradeAttempt, standardRubric } from '@/lib/grading/grade-attempt';
import { effectiveCase } from '@/lib/reviewing/effective';
import { catalogue } from '../../support/bench-rig';
import { aResponse } from '../../support/graded-case';

const jobs = [...certifiedJobs({ count: 6, word: 'expected', hardest: false }, catalogue)];

test('what a case is expected to tell is what it tells of somebody who works it as the expert does', () => {
  for (const job of jobs) {
    const acts = expert.work(job);
    const grade = gradeAttempt(job.theCase, catalogue, acts, undefined, job);
    const readings = acts.filter((act): act is StoredAct & ReadingAct => act.kind === 'reading');
    const call = acts.find((act): act is StoredAct & CallAct => act.kind === 'call');
    if (!call) throw new Error('The expert calls');
    const graded = { grade, effective: effectiveCase(grade, [], 39, []), readings, call };
    const { bands } = standardRubric(catalogue);
    const difficulty = { logits: job.certificate.difficulty, spread: 0.5 };
    const told = evidenceOfCase(graded, { difficulty, bands }, aResponse, catalogue);
    const expected = expectedOfCase(job.theCase, job.certificate, catalogue);
    expect(expected).toEqual(told.map(({ topic, model }) => ({ topic, model })));
  }
});

test('a longer route takes longer at the screen', () => {
  const [short, long] = [...jobs].sort((a, b) => a.certificate.route.steps.length - b.certificate.route.steps.length);
  if (!short || !long) throw new Error('There are jobs');
  expect(secondsAtCase(short.certificate)).toBeLessThanOrEqual(secondsAtCase(long.certificate));
});
