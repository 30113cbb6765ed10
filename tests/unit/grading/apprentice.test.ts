import { beforeAll, describe, expect, test } from 'vitest';
import { apprentice } from '@/app/_cli/policies/apprentice';
import { expert } from '@/app/_cli/policies/expert';
import { certifiedJobs, type Job } from '@/app/_cli/policies/job';
import { grown, type MakeUp } from '@/app/_cli/policies/make-up';
import { scoreOf } from '@/app/_cli/policies/score-policies';
import { gradeAttempt } from '@/lib/grading/grade-attempt';
import { catalogue } from '../../support/bench-rig';

function evenly(share: number): MakeUp {
  return { checks: share, verdicts: share, reasons: share, call: share, care: share };
}

function means(jobs: readonly Job[], policies: readonly ReturnType<typeof apprentice>[]) {
  return policies.map((policy) => {
    const grades = jobs.map((job) => ({
      caseCode: job.theCase.code,
      grade: gradeAttempt(job.theCase, catalogue, policy.work(job), undefined, job),
    }));
    return scoreOf(policy.id, grades);
  });
}

describe('over six cases', () => {
  let jobs: Job[] = [];
  beforeAll(() => {
    jobs = [
      ...certifiedJobs({ word: 'six', hardest: false, count: 4 }, catalogue),
      ...certifiedJobs({ word: 'six', hardest: true, count: 2 }, catalogue),
    ];
  }, 120_000);

  test('who can do more earns more', () => {
    const [none, some, most, all] = means(
      jobs,
      [0, 0.4, 0.8, 1].map((share) => apprentice(evenly(share), 'anybody')),
    ).map(({ mean }) => mean);
    expect(some).toBeGreaterThan(none as number);
    expect(most).toBeGreaterThan(some as number);
    expect(all).toBeGreaterThan(most as number);
  });

  test('who can do everything does what the expert does', () => {
    for (const job of jobs) expect(apprentice(evenly(1), 'anybody').work(job)).toEqual(expert.work(job));
  });

  test('what one cannot do costs the part of the marks that it belongs to', () => {
    const lacking = (part: Partial<MakeUp>) => apprentice({ ...evenly(1), ...part }, 'anybody');
    const [verdicts, reasons, call, care, checks] = means(jobs, [
      lacking({ verdicts: 0 }),
      lacking({ reasons: 0 }),
      lacking({ call: 0 }),
      lacking({ care: 0 }),
      lacking({ checks: 0 }),
    ]).map(({ parts, solved }) => ({ ...parts, solved }));
    // Close to a limit another verdict is not all wrong.
    expect(verdicts?.verdicts).toBeLessThan(0.1);
    expect(verdicts?.route).toBe(1);
    expect(reasons?.verdicts).toBe(1);
    expect(reasons?.reasons).toBeLessThan(0.8);
    expect(call).toMatchObject({ solved: 0, verdicts: 1 });
    expect(care?.practice).toBeLessThan(checks?.practice ?? 0);
    expect(checks?.route).toBeLessThan(1);
  });

  test('everybody measures something', () => {
    for (const job of jobs)
      expect(apprentice(evenly(0), 'anybody').work(job)).toContainEqual(expect.objectContaining({ kind: 'reading' }));
  });

  test('the same word errs in the same places, another in others', () => {
    const acts = (word: string) => jobs.map((job) => apprentice(evenly(0.5), word).work(job));
    expect(acts('anybody')).toEqual(acts('anybody'));
    expect(acts('anybody')).not.toEqual(acts('somebody else'));
  });
});

test('ability grows with every attempt and never past what there is', () => {
  const early = evenly(0.2);
  expect(grown(early, 0)).toEqual(early);
  expect(grown(early, 4).call).toBeGreaterThan(grown(early, 3).call);
  expect(grown(early, 1000).call).toBeLessThanOrEqual(1);
  expect(grown(evenly(1), 3)).toEqual(evenly(1));
});
