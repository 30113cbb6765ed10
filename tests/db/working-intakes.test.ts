import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { eq } from 'drizzle-orm';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { answerQuestion } from '@/app/_cli/demo/answer-question';
import { type Db, migrateDatabase } from '@/db/client';
import { addingIntake, findIntake, type Intake, isInIntakeOver } from '@/db/queries/intakes';
import { addingPoolTask } from '@/db/queries/pool-tasks';
import { attempts, intakeTasks, logEntries, poolTasks } from '@/db/schema';
import { together } from '@/db/together';
import { parseCaseCode } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { kindsOn } from '@/lib/questions/question-from-seed';
import { randomStream } from '@/lib/random';
import type { RoleProfile } from '@/lib/readiness/profile';
import { catalogue } from '../support/bench-rig';
import { aRoleProfile } from '../support/competency-rows';
import { addPersonOf, makeShopAndCollege } from '../support/shop-rows';
import { rightCall } from '../support/worked-attempt';

/** What the server does with new-hire checks, on a database of its own; loaded once its folder is named. */
async function loaded() {
  const [
    begin,
    next,
    finish,
    seed,
    own,
    soFar,
    fill,
    make,
    untold,
    taking,
    sitting,
    asked,
    permit,
    call,
    debrief,
    held,
  ] = await Promise.all([
    import('@/app/_server/intakes/begin-intake'),
    import('@/app/_server/intakes/next-task'),
    import('@/app/_server/intakes/finish-intake'),
    import('@/app/_server/intakes/intake-seed'),
    import('@/app/_server/intakes/read-own'),
    import('@/app/_server/intakes/so-far'),
    import('@/app/_server/pool/fill'),
    import('@/app/_server/pool/make-task'),
    import('@/app/_server/turns/untold'),
    import('@/app/_server/sittings/take-answer'),
    import('@/app/_server/sittings/read-sitting'),
    import('@/app/_server/questions/asked-question'),
    import('@/app/_server/permit'),
    import('@/app/_server/make-call'),
    import('@/app/_server/debrief-view'),
    import('@/app/_server/account/held-attempt'),
  ]);
  return {
    ...{ ...begin, ...next, ...finish, ...seed, ...own, ...soFar, ...fill, ...make, ...untold, ...taking, ...sitting },
    ...{ ...asked, ...permit, ...call, ...debrief, ...held },
  };
}

const data = mkdtempSync(join(tmpdir(), 'faultwright-intakes-'));
let db: Db;
let server: Awaited<ReturnType<typeof loaded>>;
let ada: ReturnType<typeof server.inventedDesk>;
let count = 0;

const begins = Date.UTC(2026, 0, 1, 8);
const minutes = (after: number) => new Date(begins + after * 60_000);
const profile = aRoleProfile({
  topics: [
    { topic: 'filtration', cut: 0, confidence: 0.9 },
    { topic: 'priming-and-lift-pump', cut: 0, confidence: 0.9 },
  ],
  safety: { clean: 3, atLeast: 1 },
});

beforeAll(async () => {
  process.env.FAULTWRIGHT_DATA = data;
  db = (await import('@/app/_server/database')).database();
  migrateDatabase(db, 'db/migrations');
  await makeShopAndCollege(db);
  await addPersonOf(db, 'ada', { harbour: 'learner' });
  await addPersonOf(db, 'ben', { harbour: 'learner' });
  server = await loaded();
  ada = server.inventedDesk('ada', 'harbour');
  await fill();
}, 60_000);

/** Cases of any topic, and questions on those that are decided. */
async function fill(): Promise<void> {
  await server.fillPool('assessed', { cases: 3, questions: 0 }, minutes(0));
  const made = profile.topics.flatMap(({ topic }) =>
    Array.from({ length: 30 }, (_, at) => {
      const kinds = kindsOn(topic);
      const kind = kinds[at % kinds.length];
      return kind ? [server.makeQuestionTask({ kind, topic }, { use: 'assessed', at: minutes(0) })] : [];
    }).flat(),
  );
  await together(
    db,
    made.map((task) => addingPoolTask(db, task)),
  );
}

afterAll(() => rmSync(data, { recursive: true }));

async function begun(changes: Partial<RoleProfile> = {}, extraTime = 0): Promise<Intake> {
  const id = `intake-${++count}`;
  const asked = { ...profile, ...changes };
  await together(db, [
    addingIntake(db, {
      ...{ id, organizationId: 'harbour', learnerId: 'ada', profileId: asked.id, profile: asked, createdBy: 'ina' },
      ...{ createdAt: minutes(0), tokenHash: `hash of ${id}`, linkEndsAt: minutes(60 * 24), extraTime },
    }),
  ]);
  await server.beginIntake(await found(id), minutes(1));
  return found(id);
}

async function found(id: string): Promise<Intake> {
  const intake = await findIntake(db, 'harbour', id);
  if (!intake) throw new Error('There is no such check');
  return intake;
}

/** Does the task that is open and goes on, until it ends. @returns at how many minutes. */
async function work(intake: Intake, right: boolean): Promise<number> {
  let leave: number | undefined;
  for (let at = 2; at < 200; at++) {
    const place = await server.goOn(ada, intake.id, { now: minutes(at), leave });
    if (place === 'finished') return at;
    if ('error' in place) throw new Error(place.error);
    leave = 'place' in place ? place.place : undefined;
    if ('attemptId' in place) await call(place.attemptId, minutes(at + 0.4));
    else await answer(place, right, minutes(at + 0.4));
  }
  throw new Error('It does not end');
}

async function call(attemptId: string, at: Date) {
  const [attempt] = await db.select().from(attempts).where(eq(attempts.id, attemptId));
  const parsed = parseCaseCode(attempt?.caseCode ?? '', catalogue);
  if ('error' in parsed) throw new Error(parsed.error);
  const { seq: _, ...body } = rightCall(caseFromSeed(parsed.spec, catalogue), 1);
  return server.makeCall(ada, attemptId, `call-${++count}`, body, { at });
}

async function answer({ sittingId, place }: { sittingId: string; place: number }, right: boolean, at: Date) {
  const asked = (await server.readSitting(ada, sittingId))?.places.find((one) => one.place === place);
  if (!asked) throw new Error('Nothing is asked');
  const { question } = await server.askedQuestion(asked);
  const given = answerQuestion(question, right, randomStream(`${count}`, 'answer'));
  return server.takeReadAnswer({ desk: ada, sittingId, place, key: `answer-${++count}`, at }, given);
}

test('somebody who knows and somebody who does not come out apart, on tasks that the stored draws give again', async () => {
  const [knows, guesses] = [await begun(), await begun()];
  await work(knows, true);
  await work(guesses, false);
  const [high, low] = [(await found(knows.id)).outcome, (await found(guesses.id)).outcome];
  for (const topic of profile.topics.map((one) => one.topic)) {
    const of = (outcome: Intake['outcome']) => outcome?.topics.find((one) => one.topic === topic);
    expect(of(high)?.chance).toBeGreaterThan(of(low)?.chance ?? 1);
    expect(of(low)?.decision).not.toBe('ready');
  }
  const given = await db.select().from(intakeTasks);
  expect(given.length).toBeGreaterThan(6);
  for (const { intakeId, choice, poolTaskId } of given) expect(server.drawnAgain(intakeId, choice)).toBe(poolTaskId);
});

test('nobody is given a task of an earlier check again, and each one given is counted', async () => {
  const given = (await db.select().from(intakeTasks)).map(({ poolTaskId }) => poolTaskId);
  expect(new Set(given).size).toBe(given.length);
  const counted = (await db.select().from(poolTasks)).filter(({ exposures }) => exposures > 0);
  expect(counted.map(({ id, exposures }) => [id, exposures]).sort()).toEqual(given.map((id) => [id, 1]).sort());
});

test('the task that is open stays the same whoever asks again, until it is done or left', async () => {
  const intake = await begun();
  const first = await server.goOn(ada, intake.id, { now: minutes(2) });
  expect(await server.goOn(ada, intake.id, { now: minutes(3) })).toEqual(first);
  const [one, other] = await Promise.all(
    [3, 3].map((at) => server.goOn(ada, intake.id, { now: minutes(at), leave: 1 })),
  );
  expect(one).toEqual(other);
  expect((await db.select().from(intakeTasks).where(eq(intakeTasks.intakeId, intake.id))).length).toBeLessThanOrEqual(
    2,
  );
});

test('nothing is told of its work before it is finished, and all of it afterwards', async () => {
  const intake = await begun();
  let leave: number | undefined;
  let attemptId: string | undefined;
  for (let at = 2; !attemptId; at++) {
    const place = await server.goOn(ada, intake.id, { now: minutes(at), leave });
    if (place === 'finished' || 'error' in place) throw new Error('No case came');
    if ('attemptId' in place) attemptId = place.attemptId;
    else leave = place.place;
  }
  await call(attemptId, minutes(20));
  const untold = await server.listUntold(db, ada, minutes(21));
  expect(untold.attempts.has(attemptId)).toBe(true);
  expect(untold.sittings.has(intake.sittingId ?? '')).toBe(true);
  expect(await server.readDebriefView(ada, attemptId)).toBe('untold');
  expect(await server.heldAttempt(db, 'ada', attemptId, minutes(21))).toMatchObject({ closed: null, caseCode: null });
  await server.finishIntake(intake, 'stopped', minutes(22), 'ina');
  expect((await server.listUntold(db, ada, minutes(23))).attempts.has(attemptId)).toBe(false);
  expect(await server.readDebriefView(ada, attemptId)).not.toBe('untold');
});

test('one whose time is over is finished by whoever reads next, as of when it ended, and takes no call any more', async () => {
  const intake = await begun({ minutes: 20 }, 0.5);
  expect(intake.endsAt).toEqual(minutes(31));
  await server.goOn(ada, intake.id, { now: minutes(2) });
  expect((await server.readOwnIntake(ada, intake.id, minutes(31)))?.finishedAt).toBeNull();
  const read = await server.readOwnIntake(ada, intake.id, minutes(40));
  expect(read).toMatchObject({ finishedAt: minutes(31), end: 'time', outcome: { decision: 'not-enough-evidence' } });
  const logged = await db.select().from(logEntries).where(eq(logEntries.event, 'intake-finished'));
  expect(logged.some(({ details }) => details.intake === intake.id)).toBe(true);
  expect(await server.goOn(ada, intake.id, { now: minutes(41) })).toBe('finished');
});

test('nobody goes on with somebody else’s', async () => {
  const intake = await begun();
  const ben = server.inventedDesk('ben', 'harbour');
  expect(await server.goOn(ben, intake.id, { now: minutes(2) })).toEqual({ error: 'not-there' });
  expect(await server.readOwnIntake(ben, intake.id, minutes(2))).toBeUndefined();
});

test('an act in one that is over changes nothing', async () => {
  const rows = await db
    .select({ id: attempts.id })
    .from(attempts)
    .where(isInIntakeOver(db, minutes(24 * 60)));
  for (const { id } of rows)
    expect(await server.makeCall(ada, id, `late-${++count}`, {} as never, { at: minutes(24 * 60) })).toHaveProperty(
      'error',
    );
  expect(rows.length).toBeGreaterThan(0);
});
