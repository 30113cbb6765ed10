import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { askedQuestion } from '@/app/_server/questions/asked-question';
import { randomId } from '@/app/_server/random-id';
import { readSitting } from '@/app/_server/sittings/read-sitting';
import { takeReadAnswer } from '@/app/_server/sittings/take-answer';
import { beginTurn } from '@/app/_server/turns/begin-turn';
import { handInTurn } from '@/app/_server/turns/hand-in-turn';
import { openCase } from '@/app/_server/turns/open-case';
import { addingAssignedClass } from '@/db/queries/assigned-people';
import { addingAssignment } from '@/db/queries/assignments';
import { findStarted } from '@/db/queries/attempts';
import { addingFirstVersion, addingSet, freezingVersion } from '@/db/queries/sets';
import { findTurn } from '@/db/queries/turns';
import { together } from '@/db/together';
import { parseCaseCode } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { knownOf } from '@/lib/grading/grade-attempt';
import { type RandomStream, randomStream } from '@/lib/random';
import type { SetBody } from '@/lib/sets/set-body';
import { apprentice } from '../policies/apprentice';
import type { Job } from '../policies/job';
import { answerQuestion } from './answer-question';
import { playActs } from './play-attempt';
import type { DemoLearner } from './play-history';
import { minutesAfter, workingDays } from './working-days';

/** Where the class is that things are given to, and by whom. */
export interface DemoClass {
  organizationId: string;
  classId: string;
  instructorId: string;
}

interface Given {
  title: string;
  mode: 'assessed' | 'practice';
  opensAt: Date;
  closesAt: Date;
}

const MORNING = 8 * 60;
/** Apprentices begin one after the other. Minutes. */
const BETWEEN = 7;

const BODY: Omit<SetBody, 'title'> = {
  note: 'Invented. Read the work order twice before you hook anything up.',
  items: [
    { id: 'a', kind: 'cases', count: 1, wishes: { topics: ['suction-tank-and-air'], difficulty: [-2, 1.5] } },
    { id: 'b', kind: 'questions', count: 2, questionKind: 'judge', topic: 'filtration' },
    { id: 'c', kind: 'questions', count: 1, questionKind: 'judge', topic: 'priming-and-lift-pump' },
  ],
};

/** Gives the class a test that has closed and a practice that is open, and has its apprentices do them as they do cases. */
export async function playAssignments(
  demoClass: DemoClass,
  learners: readonly DemoLearner[],
  now: Date,
): Promise<void> {
  const days = workingDays(now, 2);
  const [from = now, until = now] = [days.at(-4), days.at(-2)];
  const jobs = new Map<string, Job>();
  const test = await give(demoClass, {
    title: 'Suction side: what have you learnt?',
    mode: 'assessed',
    opensAt: minutesAfter(from, MORNING),
    closesAt: minutesAfter(until, 2 * MORNING),
  });
  const practice = await give(demoClass, {
    title: 'Suction side: once more',
    mode: 'practice',
    opensAt: minutesAfter(days.at(-1) ?? now, MORNING),
    closesAt: minutesAfter(days.at(-1) ?? now, 10 * 24 * 60 + 2 * MORNING),
  });
  for (const learner of learners) {
    const draw = randomStream(learner.handle, 'demo turns');
    await playTurn(learner, { ...test, ends: 'handed-in' }, jobs, draw);
    if (learner.index % 3 !== 2)
      await playTurn(learner, { ...practice, ends: learner.index % 3 === 0 ? 'handed-in' : 'open' }, jobs, draw);
  }
}

async function give({ organizationId, classId, instructorId }: DemoClass, { title, mode, opensAt, closesAt }: Given) {
  const [setId, versionId, id] = [randomId(), randomId(), randomId()];
  const db = database();
  const version = { id: versionId, setId, body: { ...BODY, title }, writtenBy: instructorId, at: opensAt };
  const rules = {
    opens: opensAt.toISOString().slice(0, 16),
    closes: closesAt.toISOString().slice(0, 16),
    timeZone: 'UTC',
    turns: mode === 'practice' ? 3 : 1,
    seeds: 'same',
    mode,
    minutes: null,
    late: 'refused',
    weights: null,
    anonymous: false,
    secondMarker: false,
  } as const;
  const times = { opensAt, closesAt, createdAt: opensAt };
  await together(db, [
    addingSet(db, { id: setId, organizationId, createdBy: instructorId, createdAt: opensAt, sharedAt: opensAt }),
    addingFirstVersion(db, version),
    freezingVersion(db, versionId, opensAt),
    addingAssignment(db, {
      ...{ id, organizationId, title, rules, createdBy: instructorId, demo: true },
      ...{ setVersionId: versionId, ...times },
    }),
    addingAssignedClass(db, { assignmentId: id, classId }),
  ]);
  return { assignmentId: id, opensAt };
}

async function playTurn(
  { desk, handle, index, makeUp }: DemoLearner,
  { assignmentId, opensAt, ends }: { assignmentId: string; opensAt: Date; ends: 'handed-in' | 'open' },
  jobs: Map<string, Job>,
  draw: RandomStream,
): Promise<void> {
  let at = minutesAfter(opensAt, (index + 1) * BETWEEN);
  const turn = await beginTurn({ desk, assignmentId, key: 'demo', at, demo: true });
  if ('error' in turn) throw new Error(`The demo begins no turn: ${turn.error}`);
  const opened = await openCase(desk, turn.id, 1, at);
  if ('error' in opened) throw new Error(`The demo opens no case: ${opened.error}`);
  const attempt = await findStarted(database(), desk.learnerId, `turn ${turn.id} 1`);
  const job = jobOf(attempt?.caseCode ?? '', jobs);
  const acts = apprentice(makeUp, handle).work(job);
  const done = ends === 'open' ? acts.slice(0, Math.ceil(acts.length / 2)) : acts;
  at = await playActs(desk, opened.attemptId, { key: `turn-${turn.id}`, job, acts: done, startedAt: at }, draw);
  const sittingId = (await findTurn(database(), desk.learnerId, turn.id))?.sittingId ?? '';
  const places = ends === 'open' ? [] : ((await readSitting(desk, sittingId))?.places ?? []);
  for (const place of places) {
    at = minutesAfter(at, draw.between(0.5, 2));
    const { question } = await askedQuestion(place);
    const answer = answerQuestion(question, draw.next() < (makeUp.verdicts + makeUp.reasons) / 2, draw);
    const key = `turn-${turn.id}-${place.place}`;
    const refused = await takeReadAnswer({ desk, sittingId, place: place.place, key, at }, answer);
    if (refused) throw new Error(`The demo does not answer: ${JSON.stringify(refused)}`);
  }
  if (ends === 'handed-in') await handInTurn(desk, turn.id, minutesAfter(at, 1));
}

/** Everybody gets the same case: it is worked out once. */
function jobOf(code: string, jobs: Map<string, Job>): Job {
  const known = jobs.get(code);
  if (known) return known;
  const parsed = parseCaseCode(code, catalogue());
  if ('error' in parsed) throw new RangeError(`The demo has no case ${code}`);
  const theCase = caseFromSeed(parsed.spec, catalogue());
  const job = { theCase, catalogue: catalogue(), ...knownOf(theCase, catalogue()) };
  jobs.set(code, job);
  return job;
}
