import { answerQuestion } from '@/app/_cli/demo/answer-question';
import type { Db } from '@/db/client';
import { listMarks } from '@/db/queries/question-marks';
import { askingQuestion } from '@/db/queries/sitting-questions';
import { addingSitting } from '@/db/queries/sittings';
import { together } from '@/db/together';
import { kinds } from '@/lib/questions/kinds';
import { QUESTION_VERSION, type QuestionSpec } from '@/lib/questions/question';
import { questionFromSeed } from '@/lib/questions/question-from-seed';
import { randomStream } from '@/lib/random';
import { answerFields } from '../support/answer-fields';
import { catalogue } from '../support/bench-rig';
import { type Caller, callAction } from '../support/call-action';
import { harbour, newSession, people, SESSION_COOKIE } from '../support/people';
import { origin } from './case-server';
import { quantile } from './spread';

/** Of each kind. */
const ANSWERS = 15;

export interface AnswerFigures {
  answers: number;
  /** Milliseconds from sending an answer's form to the last byte of the page with its mark, on one connection. */
  median: number;
  p95: number;
}

/** Answers drills as the page's script does: the page has been seen, the answer is posted, and comes back marked. */
export async function measureAnswerQuestion(db: Db): Promise<AnswerFigures> {
  const caller = { origin, cookie: await newSession(db, people.learner.id) };
  const times: number[] = [];
  for (let round = -1; round < ANSWERS; round++)
    for (const { id: kind, topics } of kinds.values()) {
      const [topic = ''] = topics;
      const time = await answerOne(db, caller, { kind, topic, seed: `bench ${round + 1}` });
      // The first of each kind warms the server up.
      if (round >= 0) times.push(time);
    }
  return { answers: times.length, median: quantile(times, 0.5), p95: quantile(times, 0.95) };
}

async function answerOne(db: Db, caller: Caller, spec: QuestionSpec): Promise<number> {
  const sittingId = `${spec.kind} ${spec.seed}`.replace(/[^a-z0-9]/g, '');
  await openDrill(db, sittingId, spec);
  const path = `/learn/sittings/${sittingId}`;
  await (await fetch(origin + path, { headers: { Cookie: `${SESSION_COOKIE}=${caller.cookie}` } })).arrayBuffer();
  const answer = answerQuestion(questionFromSeed(spec, catalogue), true, randomStream(sittingId, 'answer'));
  const fields = { sittingId, place: '1', key: '0'.repeat(32), ...answerFields(answer) };
  const start = performance.now();
  const { text } = await callAction(caller, path, 'answerQuestion', fields);
  const time = performance.now() - start;
  const marks = await listMarks(db, people.learner.id, sittingId);
  if (marks.length !== 1) throw new Error(`An answer was not marked: ${text.slice(0, 300)}`);
  return time;
}

async function openDrill(db: Db, id: string, spec: QuestionSpec): Promise<void> {
  const at = new Date();
  const whose = { learnerId: people.learner.id, organizationId: harbour.id };
  const version = { questionVersion: QUESTION_VERSION, questionHash: catalogue.questionHash };
  await together(db, [
    addingSitting(db, { id, ...whose, key: id, mode: 'drill', topics: [spec.topic ?? ''], createdAt: at }),
    askingQuestion(db, {
      sittingId: id,
      place: 1,
      spec,
      writtenVersionId: null,
      seed: spec.seed,
      ...version,
      askedAt: at,
    }),
  ]);
}
