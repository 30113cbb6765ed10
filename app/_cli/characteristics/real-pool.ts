import type { Catalogue } from '@/lib/catalogue';
import { evidenceOfCase } from '@/lib/competency/evidence-of-case';
import { modelOf } from '@/lib/competency/evidence-of-question';
import { expectedOfCase, secondsAtCase } from '@/lib/competency/expected-of-case';
import type { PoolTopic } from '@/lib/competency/pool';
import { DESIGN_SPREAD, type Derived } from '@/lib/competency/response';
import type { StoredAct } from '@/lib/grading/acts';
import { gradeAttempt, standardRubric } from '@/lib/grading/grade-attempt';
import type { GeneratedQuestion } from '@/lib/questions/question';
import { questionFromSeed } from '@/lib/questions/question-from-seed';
import type { SittingTask } from '@/lib/readiness/sitting-pool';
import { effectiveCase } from '@/lib/reviewing/effective';
import { drawQuestion } from '@/lib/sets/draw-question';
import { certifiedJobs, type Job } from '../policies/job';

/** A task of the simulated pool: a real case with all that grading it needs, or a real question. */
export type RealTask = SittingTask & ({ kind: 'case'; job: Job } | { kind: 'question'; question: GeneratedQuestion });

export interface PoolShape {
  cases: number;
  questionsPerTopic: number;
  /** Names the draws. */
  word: string;
}

/** Cases and questions on these topics as the generators draw them; of cases those that touch one of them. */
export function realPool(
  topics: readonly string[],
  { cases, questionsPerTopic, word }: PoolShape,
  catalogue: Catalogue,
) {
  const pool: RealTask[] = [];
  for (const job of certifiedJobs({ count: 10 * cases, word, hardest: false }, catalogue)) {
    const touched = expectedOfCase(job.theCase, job.certificate, catalogue).filter(({ topic }) =>
      topics.includes(topic),
    );
    if (touched.filter(({ topic }) => catalogue.topics.get(topic)?.everyCase.length === 0).length > 0)
      pool.push(caseTask(job, touched));
    if (pool.length === cases) break;
  }
  for (const topic of topics)
    for (let n = 0; n < questionsPerTopic; n++) pool.push(questionTask(topic, `${word} ${topic} ${n}`, catalogue));
  return pool;
}

function caseTask(job: Job, topics: readonly PoolTopic[]): RealTask {
  const id = `case ${job.theCase.code}`;
  const seconds = secondsAtCase(job.certificate);
  return { id, kind: 'case', exposure: id, family: id, topics, seconds, exposures: 0, job };
}

function questionTask(topic: string, seed: string, catalogue: Catalogue): RealTask {
  const question = questionFromSeed(
    drawQuestion({ id: 'any', kind: 'questions', count: 1, topic } as Parameters<typeof drawQuestion>[0], seed),
    catalogue,
  );
  const model = modelOf(question, { logits: question.difficulty, spread: DESIGN_SPREAD });
  const topics = question.topics.map((one) => ({ topic: one, model }));
  const { kind } = question.spec;
  return {
    id: seed,
    kind: 'question',
    exposure: seed,
    family: kind,
    topics,
    seconds: question.seconds,
    exposures: 0,
    question,
  };
}

/** What the real grader and the rule of evidence make of acts at a case. */
export function evidenceOf(job: Job, acts: readonly StoredAct[]): Derived[] {
  const { theCase, catalogue, certificate } = job;
  const rubric = standardRubric(catalogue);
  const grade = gradeAttempt(theCase, catalogue, acts, rubric, job);
  const readings = acts.flatMap((act) => (act.kind === 'reading' ? [{ seq: act.seq, check: act.check }] : []));
  const call = acts.find((act) => act.kind === 'call');
  if (call?.kind !== 'call') throw new RangeError('No call');
  return evidenceOfCase(
    { grade, effective: effectiveCase(grade, [], rubric.safetyCap, []), readings, call },
    { difficulty: { logits: certificate.difficulty, spread: DESIGN_SPREAD }, bands: rubric.bands },
    {
      work: '',
      counts: true,
      hints: 0,
      exposure: theCase.code,
      purpose: 'assessed',
      at: 0,
      versions: { content: '', generator: 0 },
    },
    catalogue,
  );
}
