import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { beginIntake } from '@/app/_server/intakes/begin-intake';
import { goOn, type IntakePlace } from '@/app/_server/intakes/next-task';
import { hashToken, makeToken } from '@/app/_server/link-token';
import { listProfiles } from '@/app/_server/profiles';
import { askedQuestion } from '@/app/_server/questions/asked-question';
import { randomId } from '@/app/_server/random-id';
import { readSitting } from '@/app/_server/sittings/read-sitting';
import { takeReadAnswer } from '@/app/_server/sittings/take-answer';
import { findAttempt } from '@/db/queries/attempts';
import { addingIntake, findIntake } from '@/db/queries/intakes';
import { together } from '@/db/together';
import { parseCaseCode } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { knownOf } from '@/lib/grading/grade-attempt';
import { type RandomStream, randomStream } from '@/lib/random';
import { apprentice } from '../policies/apprentice';
import type { Job } from '../policies/job';
import { answerQuestion } from './answer-question';
import type { DemoClass } from './play-assignments';
import { playActs } from './play-attempt';
import type { DemoLearner } from './play-history';
import { minutesAfter, workingDays } from './working-days';

const AFTERNOON = 15 * 60;
const LINK_DAYS = 3 * 24 * 60;
/** What takes minutes at the vehicle takes a part of them at the screen. */
const PACE = 0.1;

/** Gives the last apprentice a new-hire check and has them do it, as far as the time goes. */
export async function playIntake(
  { organizationId, instructorId }: Pick<DemoClass, 'organizationId' | 'instructorId'>,
  learners: readonly DemoLearner[],
  now: Date,
): Promise<void> {
  const learner = learners.at(-1);
  const [profile] = await listProfiles(database(), organizationId);
  if (!learner || !profile) return;
  const at = minutesAfter(workingDays(now, 1).at(-1) ?? now, AFTERNOON);
  const id = randomId();
  await together(database(), [
    addingIntake(database(), {
      ...{ id, organizationId, learnerId: learner.desk.learnerId, profileId: profile.id, profile, demo: true },
      ...{ createdBy: instructorId, createdAt: at, tokenHash: hashToken(makeToken()) },
      linkEndsAt: minutesAfter(at, LINK_DAYS),
    }),
  ]);
  const intake = await findIntake(database(), organizationId, id);
  if (!intake || !(await beginIntake(intake, at))) throw new Error('The demo begins no new-hire check');
  await work(learner, id, at);
}

async function work(learner: DemoLearner, intakeId: string, begun: Date): Promise<void> {
  const draw = randomStream(learner.handle, 'demo new-hire check');
  let [at, leave]: [Date, number | undefined] = [begun, undefined];
  for (;;) {
    const place = await goOn(learner.desk, intakeId, { now: at, leave });
    if (place === 'finished') return;
    if ('error' in place) throw new Error(`The demo does not go on: ${place.error}`);
    leave = 'place' in place ? place.place : undefined;
    at = await doTask(learner, place, at, draw);
  }
}

async function doTask(
  { desk, handle, makeUp }: DemoLearner,
  place: Exclude<IntakePlace, 'finished'>,
  at: Date,
  draw: RandomStream,
): Promise<Date> {
  if ('attemptId' in place) {
    const attempt = await findAttempt(database(), desk.learnerId, place.attemptId);
    const job = jobOf(attempt?.caseCode ?? '');
    const acts = apprentice(makeUp, handle).work(job);
    const play = { key: `intake-${place.attemptId}`, job, acts, startedAt: at, pace: PACE };
    return playActs(desk, place.attemptId, play, draw);
  }
  const asked = (await readSitting(desk, place.sittingId))?.places.find((one) => one.place === place.place);
  if (!asked) throw new Error('The demo is asked nothing');
  const { question } = await askedQuestion(asked);
  const answer = answerQuestion(question, draw.next() < (makeUp.verdicts + makeUp.reasons) / 2, draw);
  const then = minutesAfter(at, draw.between(0.5, 2));
  const { sittingId } = place;
  const refused = await takeReadAnswer(
    { desk, sittingId, place: place.place, key: `intake-${sittingId}-${place.place}`, at: then },
    answer,
  );
  if (refused) throw new Error(`The demo does not answer: ${JSON.stringify(refused)}`);
  return then;
}

function jobOf(code: string): Job {
  const parsed = parseCaseCode(code, catalogue());
  if ('error' in parsed) throw new RangeError(`The demo has no case ${code}`);
  const theCase = caseFromSeed(parsed.spec, catalogue());
  return { theCase, catalogue: catalogue(), ...knownOf(theCase, catalogue()) };
}
