import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { asc, eq } from 'drizzle-orm';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { loadDemo } from '@/app/_cli/demo/demo-content';
import { type Db, migrateDatabase } from '@/db/client';
import {
  accounts,
  acts,
  applications,
  assignments,
  attempts,
  calls,
  certificates,
  classPlaces,
  intakes,
  logEntries,
  members,
  observations,
  organizations,
  questionMarks,
  signOffs,
  sittingAnswers,
  sittingQuestions,
  sittings,
  turns,
  users,
  writtenQuestions,
  writtenVersions,
} from '@/db/schema';
import { parseCaseCode } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { gradeAttempt } from '@/lib/grading/grade-attempt';
import { catalogue } from '../support/bench-rig';

/** A Wednesday. */
const now = new Date(Date.UTC(2026, 3, 15, 14, 30));

const whole = loadDemo();
const [first, second] = whole.apprentices.slice(0, 2) as [Apprentice, Apprentice];
type Apprentice = (typeof whole.apprentices)[number];

/** The school with a class of two. */
const demo = {
  ...whole,
  apprentices: [
    { ...first, attempts: 1, weeks: 2, open: false, handPlayed: true },
    { ...second, attempts: 0, weeks: 1, open: true, handPlayed: false },
  ],
};

const data = mkdtempSync(join(tmpdir(), 'faultwright-demo-'));
const told: string[] = [];
let db: Db;
let seed: () => Promise<boolean>;

beforeAll(async () => {
  // Read once, by whatever is loaded from here on.
  process.env.FAULTWRIGHT_DATA = data;
  db = (await import('@/app/_server/database')).database();
  migrateDatabase(db, 'db/migrations');
  const { seedDemo } = await import('@/app/_cli/demo/seed-demo');
  seed = () => seedDemo(demo, now, (name, count) => told.push(`${name} ${count}`));
  await seed();
}, 240_000);

afterAll(() => rmSync(data, { recursive: true }));

/** Every row of what the demo fills. */
function everything() {
  const tables = [
    organizations,
    users,
    accounts,
    members,
    classPlaces,
    logEntries,
    attempts,
    acts,
    calls,
    writtenQuestions,
    writtenVersions,
    sittings,
    sittingAnswers,
    questionMarks,
    assignments,
    turns,
  ];
  return Promise.all(tables.map((table) => db.select().from(table)));
}

function callsMade() {
  return db.select().from(calls).orderBy(asc(calls.calledAt));
}

/** What was not done in a turn at an assignment. */
async function freely<T extends { key: string }>(rows: Promise<T[]>): Promise<T[]> {
  return (await rows).filter(({ key }) => !/^(turn|intake) /.test(key));
}

test('the school is there, marked as invented, with everybody in it', async () => {
  expect(await db.select().from(organizations)).toMatchObject([{ slug: demo.shortName, demo: true }]);
  const roles = (await db.select().from(members)).map(({ role }) => role);
  expect(roles.sort()).toEqual(['administrator', 'instructor', 'instructor', 'learner', 'learner', 'shop-lead']);
  expect((await db.select().from(users)).filter(({ keeper }) => keeper)).toMatchObject([
    { name: demo.administrator.name },
  ]);
  expect(await db.select().from(classPlaces)).toHaveLength(2);
});

test('staff come in by the password, apprentices by the PIN', async () => {
  const { auth } = await import('@/app/_server/auth');
  const { password } = await auth().$context;
  const people = await db.select().from(users);
  for (const { userId, password: hash } of await db.select().from(accounts)) {
    const learns = people.some(({ id, email }) => id === userId && email.endsWith('@gullrock.invalid'));
    const right = learns ? demo.pin : demo.password;
    expect(await password.verify({ hash: hash ?? '', password: right })).toBe(true);
  }
});

test('the log tells of it in the order of time, by nobody signed in but for questions and what was seen', async () => {
  const entries = await db.select().from(logEntries).orderBy(asc(logEntries.seq));
  expect(entries.map(({ event }) => event)).toEqual([
    'organization-added',
    'class-added',
    ...Array(6).fill('person-added'),
    ...Array(3).fill(['question-written', 'question-sent', 'question-approved']).flat(),
    'observation-written',
    'intake-begun',
    'intake-finished',
  ]);
  expect(entries.every(({ organizationId }) => organizationId !== null)).toBe(true);
  const byNobody = entries.filter(({ actorId }) => actorId === null);
  expect(byNobody).toHaveLength(9);
  const times = entries.map(({ at }) => at.getTime());
  expect([...times].sort((a, b) => a - b)).toEqual(times);
});

test('three questions are live, each approved by the instructor who did not write it', async () => {
  const versions = await db.select().from(writtenVersions);
  const instructors = (await db.select().from(members)).filter(({ role }) => role === 'instructor');
  expect(versions.map(({ state }) => state)).toEqual(['live', 'live', 'live']);
  for (const { writtenBy, reviewedBy, title } of versions) {
    expect(title).toMatch(/\(invented\)$/);
    expect([writtenBy, reviewedBy].sort()).toEqual(instructors.map(({ userId }) => userId).sort());
  }
  expect(new Set(versions.map(({ writtenBy }) => writtenBy)).size).toBe(2);
});

test('histories are as content says and lie in the past', async () => {
  expect(told).toEqual([`${first.name} 4`, `${second.name} 1`]);
  // How many cases the new-hire check gave depends on what was drawn for it.
  const started = (await db.select().from(attempts)).filter(({ key }) => !key.startsWith('intake '));
  expect(await freely(db.select().from(attempts))).toHaveLength(5);
  expect(started.every(({ demo: invented, organizationId }) => invented && organizationId !== null)).toBe(true);
  // Of the two tests and the practice that one of them handed in, too.
  const ended = (await callsMade()).filter(({ attemptId }) => started.some(({ id }) => id === attemptId));
  expect(ended).toHaveLength(6);
  for (const { id, createdAt } of started) {
    const own = (await db.select().from(acts)).filter(({ attemptId }) => attemptId === id);
    const called = (await callsMade()).filter(({ attemptId }) => attemptId === id);
    const times = [createdAt, ...own.map((act) => act.createdAt), ...called.map(({ calledAt }) => calledAt), now];
    expect(own.length).toBeGreaterThan(0);
    expect([...times].sort((a, b) => a.getTime() - b.getTime())).toEqual(times);
  }
});

test('a new-hire check was done, within its time, by the apprentice who was given it', async () => {
  const [intake, ...others] = await db.select().from(intakes);
  expect(others).toEqual([]);
  expect(intake).toMatchObject({ demo: true, end: expect.stringMatching(/decided|all-asked|time/) });
  const { startedAt, finishedAt, endsAt, outcome } = intake ?? {};
  expect(finishedAt?.getTime()).toBeGreaterThan(startedAt?.getTime() ?? Number.POSITIVE_INFINITY);
  expect(finishedAt?.getTime()).toBeLessThanOrEqual(Math.min(endsAt?.getTime() ?? 0, now.getTime()));
  expect(outcome?.tasks).toBeGreaterThan(0);
});

test('one of them holds a certificate, marked as invented, that is signed and in force', async () => {
  const [certificate, ...others] = await db.select().from(certificates);
  expect(others).toEqual([]);
  expect(certificate).toMatchObject({ demo: true, consent: { name: false, results: false } });
  expect((await db.select().from(applications)).map(({ demo: invented, state }) => [invented, state])).toEqual([
    [true, 'granted'],
  ]);
  const { checkText } = await import('@/app/_server/certificates/check-text');
  const checked = await checkText(certificate?.jwt ?? '', { audience: '', nonce: '' }, now);
  expect(checked.verification).toMatchObject({ ok: true });
});

test('a gauge was lost in one of the attempts that were thought out', async () => {
  const shown = (await db.select().from(acts)).flatMap(({ body }) => (body.kind === 'reading' ? body.shown : []));
  expect(shown.filter(({ kind }) => kind === 'destroyed')).toHaveLength(1);
});

test('marks are what grading makes of the acts', async () => {
  const started = await db.select().from(attempts);
  for (const { attemptId, seq, body, grade } of await callsMade()) {
    const parsed = parseCaseCode(started.find(({ id }) => id === attemptId)?.caseCode ?? '', catalogue);
    if ('error' in parsed) throw new Error(parsed.error);
    const own = await db.select().from(acts).orderBy(asc(acts.seq));
    const done = own.filter((act) => act.attemptId === attemptId).map((act) => ({ ...act.body, seq: act.seq }));
    const again = gradeAttempt(caseFromSeed(parsed.spec, catalogue), catalogue, [...done, { ...body, seq }]);
    expect(grade).toEqual(JSON.parse(JSON.stringify(again)));
  }
}, 120_000);

test('every apprentice has answered questions, in the past, marked as invented and handed in', async () => {
  const sat = await freely(db.select().from(sittings));
  expect(sat.map(({ mode }) => mode).sort()).toEqual(['check', 'check', 'check', 'drill', 'drill']);
  expect(sat.every(({ demo: invented, handedInAt }) => invented && handedInAt !== null && handedInAt < now)).toBe(true);
  const inThose = ({ sittingId }: { sittingId: string }) => sat.some(({ id }) => id === sittingId);
  const asked = (await db.select().from(sittingQuestions)).filter(inThose);
  const answers = (await db.select().from(sittingAnswers)).filter(inThose);
  const marks = (await db.select().from(questionMarks)).filter(inThose);
  expect([answers.length, marks.length]).toEqual([asked.length, asked.length]);
  for (const { sittingId, answeredAt } of answers) {
    const sitting = sat.find(({ id }) => id === sittingId);
    expect(answeredAt.getTime()).toBeGreaterThan(sitting?.createdAt.getTime() ?? Number.POSITIVE_INFINITY);
  }
});

test('who knows more has more of the questions right, and free text waits for an instructor', async () => {
  const marks = await db.select().from(questionMarks);
  const credits = marks.flatMap(({ mark }) => mark.credit ?? []);
  expect(marks.length - credits.length).toBe(1);
  expect(credits.some((credit) => credit === 1) && credits.some((credit) => credit < 1)).toBe(true);
});

test('the class has done a test that has closed, and some are at a practice that is open', async () => {
  const done = await db.select().from(turns);
  expect(done.map(({ handedInAt }) => handedInAt !== null).sort()).toEqual([false, true, true, true]);
  expect(done.every(({ demo: invented, startedAt }) => invented && startedAt < now)).toBe(true);
  expect(await db.select().from(assignments).where(eq(assignments.demo, true))).toHaveLength(2);
});

test('a database with people is left as it is', async () => {
  const before = await everything();
  expect(await seed()).toBe(false);
  expect(await everything()).toEqual(before);
});

test('the school has a hands-on check, and nobody is signed off who has not shown enough', async () => {
  expect(await db.select().from(observations)).toMatchObject([
    { unsafe: false, comment: expect.stringMatching(/^Invented/) },
  ]);
  for (const { standing, signedBy, learnerId } of await db.select().from(signOffs)) {
    expect(standing.decision).toBe('ready');
    expect(signedBy).not.toBe(learnerId);
  }
});
