import type { Catalogue } from '@/lib/catalogue';
import type { Grade, Part } from '@/lib/grading/grade';
import { parts } from '@/lib/grading/grade';
import { gradeAttempt } from '@/lib/grading/grade-attempt';
import { certifiedJobs, type DrawOptions, type Policy } from './job';

/** How one policy fared over many cases. */
export interface PolicyScore {
  policy: string;
  cases: number;
  /** Of the totals, 0…100. */
  mean: number;
  sd: number;
  /** Share of cases with every cause and every repair right. */
  solved: number;
  /** Mean shop time of the readings. */
  minutes: number;
  /** Mean ordered score, 0…4. */
  score: number;
  /** Mean share of the points of each part. */
  parts: Record<Part, number>;
  /** Mean points lost by the reason for it, the most first. */
  lost: { code: string; points: number }[];
  /** Cases with the fewest points. */
  worst: { caseCode: string; total: number }[];
}

const WORST = 5;

/** Every policy works on every case; each attempt is graded from its acts like a learner's. */
export function scorePolicies(policies: readonly Policy[], options: DrawOptions, catalogue: Catalogue): PolicyScore[] {
  const graded = policies.map((policy) => ({ policy, grades: [] as { caseCode: string; grade: Grade }[] }));
  for (const job of certifiedJobs(options, catalogue)) {
    for (const { policy, grades } of graded) {
      const grade = gradeAttempt(job.theCase, catalogue, policy.work(job), undefined, job);
      grades.push({ caseCode: job.theCase.code, grade });
    }
  }
  return graded.map(({ policy, grades }) => scoreOf(policy.id, grades));
}

/** What one policy has made of its attempts. */
export function scoreOf(policy: string, attempts: readonly { caseCode: string; grade: Grade }[]): PolicyScore {
  const grades = attempts.map(({ grade }) => grade);
  const mean = (of: (grade: Grade) => number) => grades.reduce((sum, grade) => sum + of(grade), 0) / grades.length;
  const total = mean((grade) => grade.total);
  const variance = mean((grade) => (grade.total - total) ** 2);
  const shareOfPart = (part: Part) =>
    mean((grade) =>
      grade.parts.filter((one) => one.part === part).reduce((sum, { points, outOf }) => sum + points / outOf, 0),
    );
  return {
    policy,
    cases: grades.length,
    mean: total,
    sd: Math.sqrt(variance),
    solved: mean(({ callCorrect: { cause, repair } }) => Number(cause && repair)),
    minutes: mean(({ minutes }) => minutes),
    score: mean(({ score }) => score ?? 0),
    parts: Object.fromEntries(parts.map((part) => [part, shareOfPart(part)])) as Record<Part, number>,
    lost: lostBy(grades),
    worst: attempts
      .map(({ caseCode, grade }) => ({ caseCode, total: grade.total }))
      .sort((a, b) => a.total - b.total)
      .slice(0, WORST),
  };
}

function lostBy(grades: readonly Grade[]): PolicyScore['lost'] {
  const sums = new Map<string, number>();
  for (const { code, points = 0, values } of grades.flatMap(({ notes }) => notes)) {
    const outOf = typeof values.outOf === 'number' ? values.outOf : 0;
    sums.set(code, (sums.get(code) ?? 0) + outOf - points);
  }
  const means = [...sums].map(([code, sum]) => ({ code, points: sum / grades.length }));
  return means.filter(({ points }) => points > 0).sort((a, b) => b.points - a.points);
}
