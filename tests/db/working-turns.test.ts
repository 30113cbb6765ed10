import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { eq } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { answerQuestion } from '@/app/_cli/demo/answer-question';
import { type Db, migrateDatabase } from '@/db/client';
import { assignedPeople, attempts, calls, sittingQuestions, sittings, turns, turnTasks } from '@/db/schema';
import type { AssignmentRules } from '@/lib/assignments/rules';
import { parseCaseCode } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { randomStream } from '@/lib/random';
import { ALIKE_WITHIN } from '@/lib/sets/draw-case';
import { catalogue } from '../support/bench-rig';
import { addPersonOf, makeShopAndCollege } from '../support/shop-rows';
import { addAssignment, addSet, aSetBody, someRules } from '../support/teaching-rows';
import { rightCall } from '../support/worked-attempt';

/** What the server does with turns, on a database of its own; loaded once its folder is named. */
async function loaded() {
  const [begin, open, hand, untold, taking, act, call, sitting, asked, permit, cards, held, json] = await Promise.all([
    import('@/app/_server/turns/begin-turn'),
    import('@/app/_server/turns/open-case'),
    import('@/app/_server/turns/hand-in-turn'),
    import('@/app/_server/turns/untold'),
    import('@/app/_server/sittings/take-answer'),
    import('@/app/_server/take-act'),
    import('@/app/_server/make-call'),
    import('@/app/_server/sittings/read-sitting'),
    import('@/app/_server/questions/asked-question'),
    import('@/app/_server/permit'),
    import('@/app/_server/sittings/review-cards'),
    import('@/app/_server/account/everything-held-on'),
    import('@/app/_server/account/json-export'),
  ]);
  return {
    ...begin,
    ...open,
    ...hand,
    ...untold,
    ...taking,
    ...act,
    ...call,
    ...sitting,
    ...asked,
    ...permit,
    ...cards,
    ...held,
    ...json,
  };
}

const data = mkdtempSync(join(tmpdir(), 'faultwright-turns-'));
let db: Db;
let server: Awaited<ReturnType<typeof loaded>>;
let ada: ReturnType<typeof server.inventedDesk>;
let ben: typeof ada;
let count = 0;

/** As the builders have it: opens 1 January at 8, closes 8 January at 8. */
const opens = Date.UTC(2026, 0, 1, 8);
const closes = Date.UTC(2026, 0, 8, 8);
const minutes = (count: number, after = opens) => new Date(after + count * 60_000);

beforeAll(async () => {
  process.env.FAULTWRIGHT_DATA = data;
  db = (await import('@/app/_server/database')).database();
  migrateDatabase(db, 'db/migrations');
  await makeShopAndCollege(db);
  await addPersonOf(db, 'ben', { harbour: 'learner' });
  server = await loaded();
  ada = server.inventedDesk('ada', 'harbour');
  ben = server.inventedDesk('ben', 'harbour');
});

afterAll(() => rmSync(data, { recursive: true }));

/** An assignment of its own, of one case on the supply side and one question. */
async function anAssignment(rules: Partial<AssignmentRules> = {}, body = aSetBody()): Promise<string> {
  const id = `assignment-${++count}`;
  const { versionId } = await addSet(db, { id: `set-${count}`, organizationId: 'harbour', createdBy: 'ina', body });
  await addAssignment(db, {
    id,
    organizationId: 'harbour',
    setVersionId: versionId,
    createdBy: 'ina',
    rules: someRules(rules),
  });
  return id;
}

async function begun(assignmentId: string, { at = minutes(1), desk = ada, key = `key-${++count}` } = {}) {
  const turn = await server.beginTurn({ desk, assignmentId, key, at });
  if ('error' in turn) throw new Error(turn.error);
  return turn;
}

async function opened(turnId: string, { at = minutes(2), desk = ada, place = 1 } = {}): Promise<string> {
  const made = await server.openCase(desk, turnId, place, at);
  if ('error' in made) throw new Error(made.error);
  return made.attemptId;
}

async function caseOf(attemptId: string) {
  const [attempt] = await db.select().from(attempts).where(eq(attempts.id, attemptId));
  const parsed = parseCaseCode(attempt?.caseCode ?? '', catalogue);
  if ('error' in parsed || !attempt) throw new Error('No such case');
  return { attempt, theCase: caseFromSeed(parsed.spec, catalogue) };
}

async function call(attemptId: string, at = minutes(10), desk = ada) {
  const { seq: _, ...body } = rightCall((await caseOf(attemptId)).theCase, 1);
  return server.makeCall(desk, attemptId, `call-${++count}`, body, { at });
}

/** Answers the first question of a turn, right unless said otherwise. */
async function answer(sittingId: string | null, at: Date, { right = true, desk = ada } = {}) {
  const [place] = (await server.readSitting(desk, sittingId ?? ''))?.places ?? [];
  if (!place) throw new Error('Nothing is asked');
  const { question } = await server.askedQuestion(place);
  const request = { desk, sittingId: sittingId ?? '', place: 1, key: `answer-${++count}`, at };
  return server.takeReadAnswer(request, answerQuestion(question, right, randomStream('any', 'answer')));
}

describe('beginning', () => {
  test('asks every question at once and opens no case', async () => {
    const turn = await begun(await anAssignment());
    expect(turn).toMatchObject({ number: 1, handedInAt: null, endsAt: new Date(closes) });
    expect(await db.select().from(turnTasks).where(eq(turnTasks.turnId, turn.id))).toMatchObject([
      { place: 2, attemptId: null, sittingPlace: 1 },
    ]);
    const [sitting] = await db
      .select()
      .from(sittings)
      .where(eq(sittings.id, turn.sittingId ?? ''));
    expect(sitting).toMatchObject({ mode: 'check', closesAt: new Date(closes) });
  });

  test('is refused before it opens, when it has closed and once every turn is used', async () => {
    const assignmentId = await anAssignment();
    const at = (moment: Date) => server.beginTurn({ desk: ada, assignmentId, key: `key-${++count}`, at: moment });
    expect(await at(minutes(-1))).toEqual({ error: 'assignment-coming' });
    expect(await at(minutes(0, closes))).toEqual({ error: 'assignment-closed' });
    const turn = await begun(assignmentId);
    await server.handInTurn(ada, turn.id, minutes(5));
    expect(await at(minutes(6))).toEqual({ error: 'no-turns-left' });
  });

  test('happens once for a key, and goes on with the turn that is open for another', async () => {
    const assignmentId = await anAssignment({ turns: 3 });
    const ids = await Promise.all(
      ['same', 'same', 'other'].map(async (key) => (await begun(assignmentId, { key })).id),
    );
    expect(new Set(ids).size).toBe(1);
    await server.handInTurn(ada, ids[0] ?? '', minutes(5));
    expect((await begun(assignmentId, { key: 'same', at: minutes(6) })).id).toBe(ids[0]);
    expect((await begun(assignmentId, { key: 'third', at: minutes(7) })).number).toBe(2);
  });

  test('of another organisation’s assignment is like beginning nothing', async () => {
    const assignmentId = await anAssignment();
    const stranger = server.inventedDesk('cy', 'college');
    const wish = { desk: stranger, assignmentId, key: 'key', at: minutes(1) };
    expect(await server.beginTurn(wish)).toEqual({ error: 'not-there' });
  });
});

describe('cases', () => {
  test('of the same seeds are the same for everybody, and another one in the next turn', async () => {
    const assignmentId = await anAssignment({ turns: 2 });
    const first = await begun(assignmentId);
    const codes = [await caseOf(await opened(first.id))];
    const bens = await begun(assignmentId, { desk: ben });
    codes.push(await caseOf(await opened(bens.id, { desk: ben })));
    expect(codes[0]?.theCase.code).toBe(codes[1]?.theCase.code);
    await server.handInTurn(ada, first.id, minutes(5));
    const second = await begun(assignmentId, { at: minutes(6) });
    const next = await caseOf(await opened(second.id, { at: minutes(7) }));
    expect(next.theCase.code).not.toBe(codes[0]?.theCase.code);
  });

  test('of parallel seeds differ and are as hard, and so do the questions', async () => {
    const assignmentId = await anAssignment({ seeds: 'parallel' });
    const turnsOfBoth = [await begun(assignmentId), await begun(assignmentId, { desk: ben })];
    const [one, other] = [
      await caseOf(await opened(turnsOfBoth[0]?.id ?? '')),
      await caseOf(await opened(turnsOfBoth[1]?.id ?? '', { desk: ben })),
    ];
    expect(one.theCase.code).not.toBe(other.theCase.code);
    const apart = Math.abs((one.attempt.difficulty ?? 9) - (other.attempt.difficulty ?? -9));
    expect(apart).toBeLessThanOrEqual(2 * ALIKE_WITHIN);
    const seeds = await Promise.all(
      turnsOfBoth.map(({ sittingId }) =>
        db
          .select({ seed: sittingQuestions.seed })
          .from(sittingQuestions)
          .where(eq(sittingQuestions.sittingId, sittingId ?? '')),
      ),
    );
    expect(seeds[0]?.[0]?.seed).not.toBe(seeds[1]?.[0]?.seed);
  });

  test('are opened once, are coached in practice alone, and at no place that is a question or not there', async () => {
    const assessed = await begun(await anAssignment());
    const ids = await Promise.all([1, 2, 3].map(() => opened(assessed.id)));
    expect(new Set(ids).size).toBe(1);
    expect((await caseOf(ids[0] ?? '')).attempt.coached).toBe(false);
    for (const place of [2, 9])
      expect(await server.openCase(ada, assessed.id, place, minutes(2))).toEqual({ error: 'not-there' });
    expect(await server.openCase(ben, assessed.id, 1, minutes(2))).toEqual({ error: 'not-there' });
    const practice = await begun(await anAssignment({ mode: 'practice' }));
    expect((await caseOf(await opened(practice.id))).attempt.coached).toBe(true);
  });

  test('are graded by the weights of the assignment', async () => {
    const weights = { verdicts: 10, reasons: 10, call: 60, route: 10, practice: 10 };
    const turn = await begun(await anAssignment({ weights }));
    const attemptId = await opened(turn.id);
    expect(await call(attemptId)).toEqual({ done: true });
    const [row] = await db.select().from(calls).where(eq(calls.attemptId, attemptId));
    expect(row?.grade.parts.map(({ part, outOf }) => [part, outOf])).toEqual(Object.entries(weights));
  });
});

describe('time', () => {
  test('is over by the server’s clock: nothing is taken, and the turn is handed in as it stands', async () => {
    const assignmentId = await anAssignment({ minutes: 30 });
    const turn = await begun(assignmentId, { at: minutes(0) });
    const attemptId = await opened(turn.id);
    expect(await answer(turn.sittingId, minutes(29))).toBeUndefined();
    expect(await answer(turn.sittingId, minutes(31))).toEqual({ error: 'sitting-closed' });
    expect(await call(attemptId, minutes(31))).toEqual({ error: 'turn-over' });
    expect(await server.openCase(ada, turn.id, 1, minutes(31))).toEqual({ attemptId });
    await server.handInOverdueTurns({ organizationId: 'harbour', assignmentId }, minutes(90));
    const [row] = await db.select().from(turns).where(eq(turns.id, turn.id));
    expect(row?.handedInAt).toEqual(minutes(30));
    const marked = await server.readSitting(ada, turn.sittingId ?? '');
    expect(marked?.places.map(({ mark }) => mark?.mark.credit)).toEqual([1]);
  });

  test('over while a case was never opened leaves it closed', async () => {
    const turn = await begun(await anAssignment({ minutes: 30 }), { at: minutes(0) });
    expect(await server.openCase(ada, turn.id, 1, minutes(31))).toEqual({ error: 'turn-over' });
    expect(
      await db
        .select()
        .from(attempts)
        .where(eq(attempts.key, `turn ${turn.id} 1`)),
    ).toEqual([]);
  });

  test('is longer for who gets more, at the end of the window too', async () => {
    const assignmentId = await anAssignment({ minutes: 60 });
    await db.insert(assignedPeople).values({ assignmentId, userId: 'ben', named: true, extraTime: 0.5 });
    expect((await begun(assignmentId, { at: minutes(0) })).endsAt).toEqual(minutes(60));
    expect((await begun(assignmentId, { desk: ben, at: minutes(0) })).endsAt).toEqual(minutes(90));
    const last = minutes(-10, closes);
    const [adas, bens] = [await anAssignment({ minutes: 60 }), await anAssignment({ minutes: 60 })];
    await db.insert(assignedPeople).values({ assignmentId: bens, userId: 'ben', named: true, extraTime: 0.5 });
    expect((await begun(adas, { at: last })).endsAt).toEqual(minutes(0, closes));
    expect((await begun(bens, { desk: ben, at: last })).endsAt).toEqual(minutes(30, closes));
  });

  test('late work is taken where the rule lets it', async () => {
    const assignmentId = await anAssignment({ late: { hours: 24, cost: 20 } });
    const turn = await begun(assignmentId, { at: minutes(60, closes) });
    expect(turn.endsAt).toEqual(minutes(24 * 60, closes));
    expect(await answer(turn.sittingId, minutes(61, closes))).toBeUndefined();
    const after = { desk: ben, assignmentId, key: 'too late', at: minutes(24 * 60, closes) };
    expect(await server.beginTurn(after)).toEqual({ error: 'assignment-closed' });
  });

  test('after handing in, nothing more is taken', async () => {
    const turn = await begun(await anAssignment());
    const attemptId = await opened(turn.id);
    expect(await server.handInTurn(ben, turn.id, minutes(5))).toBe(false);
    expect(await server.handInTurn(ada, turn.id, minutes(5))).toBe(true);
    expect(await call(attemptId, minutes(6))).toEqual({ error: 'turn-over' });
    expect(await answer(turn.sittingId, minutes(6))).toEqual({ error: 'sitting-closed' });
    expect(await server.handInTurn(ada, turn.id, minutes(7))).toBe(true);
    const [row] = await db.select().from(turns).where(eq(turns.id, turn.id));
    expect(row?.handedInAt).toEqual(minutes(5));
  });
});

describe('what is not told', () => {
  test('is the work of an assessed turn until the last has closed', async () => {
    const assignmentId = await anAssignment({ minutes: 60 });
    await db.insert(assignedPeople).values({ assignmentId, userId: 'ben', named: true, extraTime: 0.5 });
    const turn = await begun(assignmentId, { at: minutes(0) });
    const attemptId = await opened(turn.id);
    const known = async (at: Date) => (await server.listUntold(db, ada, at)).attempts.has(attemptId);
    expect(await known(minutes(29, closes))).toBe(true);
    expect(await known(minutes(31, closes))).toBe(false);
  });

  test('is nothing of practice', async () => {
    const turn = await begun(await anAssignment({ mode: 'practice' }));
    const attemptId = await opened(turn.id);
    const untold = await server.listUntold(db, ada, minutes(5));
    expect([untold.attempts.has(attemptId), untold.sittings.has(turn.sittingId ?? '')]).toEqual([false, false]);
  });

  test('stays out of exports and review cards, and is in them afterwards', async () => {
    const cy = server.inventedDesk('cy', 'harbour');
    await addPersonOf(db, 'cy', { harbour: 'learner' });
    const turn = await begun(await anAssignment(), { desk: cy });
    const attemptId = await opened(turn.id, { desk: cy });
    expect(await call(attemptId, minutes(10), cy)).toEqual({ done: true });
    expect(await answer(turn.sittingId, minutes(11), { desk: cy })).toBeUndefined();
    await server.handInTurn(cy, turn.id, minutes(12));
    const { theCase } = await caseOf(attemptId);
    const told = async (now: Date) => {
      const held = await server.everythingHeldOn(db, 'cy', now);
      let text = '';
      if (held) for await (const piece of server.jsonExport(held, now)) text += piece;
      const words = [theCase.code, '"expertRoute"', `"cause":"${theCase.truth.cause}"`, '"explanation"'];
      return words.map((word) => text.includes(word));
    };
    const cards = async (now: Date) => {
      const { due, others } = await server.reviewCards(cy, now);
      return due.length + others.length;
    };
    expect(await told(minutes(0, closes))).toEqual([false, false, false, false]);
    expect(await cards(minutes(0, closes))).toBe(0);
    expect(await told(minutes(1, closes))).toEqual([true, true, true, true]);
    expect(await cards(minutes(1, closes))).toBe(1);
  });
});
