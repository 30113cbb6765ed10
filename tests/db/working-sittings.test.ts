import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { eq } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { answerQuestion } from '@/app/_cli/demo/answer-question';
import { type Db, migrateDatabase } from '@/db/client';
import { listMarks } from '@/db/queries/question-marks';
import { addingDraft, addingWrittenQuestion, approvingVersion, sendingForReview } from '@/db/queries/written-questions';
import { questionMarks, sittingAnswers, sittingQuestions, sittings } from '@/db/schema';
import { claimThen, together } from '@/db/together';
import type { Answer } from '@/lib/questions/answer';
import { randomStream } from '@/lib/random';
import { makeShopAndCollege } from '../support/shop-rows';
import { minutesOn, start } from '../support/sitting-rows';
import { aWrittenQuestion } from '../support/written-questions';

/** What the server does with sittings, on a database of its own; loaded once its folder is named. */
async function loaded() {
  const [starting, taking, next, hand, current, cards, asked, permit] = await Promise.all([
    import('@/app/_server/sittings/start-sitting'),
    import('@/app/_server/sittings/take-answer'),
    import('@/app/_server/sittings/ask-next'),
    import('@/app/_server/sittings/hand-in'),
    import('@/app/_server/sittings/current-sitting'),
    import('@/app/_server/sittings/review-cards'),
    import('@/app/_server/questions/asked-question'),
    import('@/app/_server/permit'),
  ]);
  return { ...starting, ...taking, ...next, ...hand, ...current, ...cards, ...asked, ...permit };
}

const data = mkdtempSync(join(tmpdir(), 'faultwright-sittings-'));
let db: Db;
let server: Awaited<ReturnType<typeof loaded>>;
let ada: ReturnType<typeof server.inventedDesk>;
let ben: typeof ada;
let count = 0;

beforeAll(async () => {
  process.env.FAULTWRIGHT_DATA = data;
  db = (await import('@/app/_server/database')).database();
  migrateDatabase(db, 'db/migrations');
  await makeShopAndCollege(db);
  server = await loaded();
  ada = server.inventedDesk('ada', 'harbour');
  ben = server.inventedDesk('ben', 'harbour');
});

afterAll(() => rmSync(data, { recursive: true }));

const wish = (at = start, desk = ada) => ({ desk, key: `start-${++count}`, at });
const drill = async (topic = 'filtration') => (await server.startDrill(wish(), topic)) ?? '';
const check = async (changes: Partial<Parameters<typeof server.startCheck>[1]> = {}, desk = ada) =>
  (await server.startCheck(wish(start, desk), { topics: ['filtration'], questions: 5, minutes: null, ...changes })) ??
  '';
const read = async (id: string, at = minutesOn(1)) => (await server.currentSitting(ada, id, at))?.places ?? [];

/** An answer that fits, right or not. */
async function anyAnswer(id: string, place: number, at = minutesOn(1)): Promise<Answer> {
  const asked = (await read(id, at)).find((one) => one.place === place);
  if (!asked) throw new Error(`Nothing is asked at ${place}`);
  const { question } = await server.askedQuestion(asked);
  return answerQuestion(question, true, randomStream('any', 'answer'));
}

async function answer(id: string, place: number, { at = minutesOn(1), key = `answer-${++count}`, desk = ada } = {}) {
  const body = await anyAnswer(id, place, at);
  return server.takeReadAnswer({ desk, sittingId: id, place, key, at }, body);
}

describe('a drill', () => {
  test('asks one question, marks its answer at once and asks another kind next', async () => {
    const id = await drill();
    expect(await answer(id, 1)).toBeUndefined();
    expect(await server.askNext(ada, id, minutesOn(2))).toBeUndefined();
    const [first, second] = await read(id);
    expect(first?.mark?.mark.credit).toBe(1);
    expect(second?.mark).toBeUndefined();
    expect(second?.spec?.topic).toBe('filtration');
    expect(second?.spec?.kind).not.toBe(first?.spec?.kind);
  });

  test('asks nothing more before the last is answered', async () => {
    const id = await drill();
    expect(await server.askNext(ada, id, minutesOn(2))).toBeUndefined();
    expect(await read(id)).toHaveLength(1);
  });

  test('takes an answer once; a retry of the same finds it stored', async () => {
    const id = await drill();
    const at = minutesOn(1);
    const body = await anyAnswer(id, 1);
    const request = { desk: ada, sittingId: id, place: 1, at };
    expect(await server.takeReadAnswer({ ...request, key: 'once' }, body)).toBeUndefined();
    expect(await server.takeReadAnswer({ ...request, key: 'once' }, body)).toBeUndefined();
    expect(await server.takeReadAnswer({ ...request, key: 'other' }, body)).toEqual({ error: 'question-answered' });
    expect(await db.select().from(sittingAnswers).where(eq(sittingAnswers.sittingId, id))).toHaveLength(1);
  });

  test('that is left leaves the open question unmarked', async () => {
    const id = await drill();
    await answer(id, 1);
    await server.askNext(ada, id, minutesOn(2));
    await server.handIn(ada, id, minutesOn(3));
    expect(await listMarks(db, 'ada', id)).toHaveLength(1);
    expect(await server.askNext(ada, id, minutesOn(4))).toEqual({ error: 'sitting-closed' });
  });

  test('on nothing that is a topic does not start', async () => {
    expect(await server.startDrill(wish(), 'no-such-topic')).toBeUndefined();
  });
});

describe('an answer', () => {
  test('that the question does not offer is not stored', async () => {
    const id = await drill();
    const request = { desk: ada, sittingId: id, place: 1, key: `answer-${++count}`, at: minutesOn(1) };
    const refused = await server.takeReadAnswer(request, { form: 'choice', option: 'no-such-option' });
    expect(refused).toEqual({ error: 'answer-not-offered' });
    expect(await db.select().from(sittingAnswers).where(eq(sittingAnswers.sittingId, id))).toEqual([]);
  });

  test('to somebody else’s question, or to none, is as if it were not there', async () => {
    const id = await drill();
    const body = await anyAnswer(id, 1);
    const request = { sittingId: id, place: 1, key: `answer-${++count}`, at: minutesOn(1) };
    expect(await server.takeReadAnswer({ ...request, desk: ben }, body)).toEqual({ error: 'not-there' });
    expect(await server.takeReadAnswer({ ...request, desk: ada, place: 2 }, body)).toEqual({ error: 'not-there' });
    expect(await server.takeReadAnswer({ ...request, desk: ada, sittingId: 'none' }, body)).toEqual({
      error: 'not-there',
    });
    expect(await server.askNext(ben, id, minutesOn(1))).toEqual({ error: 'not-there' });
    expect(await server.handIn(ben, id, minutesOn(1))).toBe(false);
    expect(await server.currentSitting(ben, id, minutesOn(1))).toBeUndefined();
  });
});

describe('a check', () => {
  test('draws all its questions at once, on its topics in turn, no kind twice in a row', async () => {
    const id = await check({ topics: ['filtration', 'fuel-quality'], questions: 12 });
    const specs = (await read(id)).map(({ spec }) => spec);
    expect(specs).toHaveLength(12);
    for (const topic of ['filtration', 'fuel-quality'])
      expect(specs.filter((spec) => spec?.topic === topic)).toHaveLength(6);
    for (const [place, spec] of specs.entries()) expect(spec?.kind).not.toBe(specs[place - 1]?.kind);
  });

  test('asks nobody what it asks somebody else: no two seeds are alike, nor drawn from anything that is seen', async () => {
    const ids = [await check(), await check(), await check({}, ben)];
    const rows = await db.select().from(sittingQuestions);
    const seeds = rows.filter(({ sittingId }) => ids.includes(sittingId)).map(({ seed }) => seed);
    expect(seeds).toHaveLength(15);
    expect(new Set(seeds).size).toBe(15);
    for (const seed of seeds) expect(ids.some((id) => seed.includes(id))).toBe(false);
  });

  test('marks nothing before it is handed in, and then everything, what was left open with nothing', async () => {
    const id = await check();
    await answer(id, 1);
    await answer(id, 2);
    expect(await listMarks(db, 'ada', id)).toEqual([]);
    await server.handIn(ada, id, minutesOn(5));
    const marks = await listMarks(db, 'ada', id);
    expect(marks.map(({ mark }) => mark.credit)).toEqual([1, 1, 0, 0, 0]);
    expect(marks.map(({ answer: given }) => given === null)).toEqual([false, false, true, true, true]);
    expect(await answer(id, 3, { at: minutesOn(6) })).toEqual({ error: 'sitting-closed' });
  });

  test('counts the last of several answers', async () => {
    const id = await check();
    const [first] = await read(id);
    if (!first) throw new Error('Nothing is asked');
    const { question } = await server.askedQuestion(first);
    for (const [index, knows] of [true, false, true].entries()) {
      const given = answerQuestion(question, knows, randomStream('several', String(index)));
      const request = { desk: ada, sittingId: id, place: 1, key: `change-${index}`, at: minutesOn(index + 1) };
      expect(await server.takeReadAnswer(request, given)).toBeUndefined();
    }
    await server.handIn(ada, id, minutesOn(5));
    expect((await listMarks(db, 'ada', id))[0]?.mark.credit).toBe(1);
  });

  test('takes what was on its way when the time ran out, refuses what comes later, and is handed in when looked at', async () => {
    const id = await check({ minutes: 10 });
    expect(await answer(id, 1, { at: minutesOn(10.2) })).toBeUndefined();
    expect((await server.currentSitting(ada, id, minutesOn(10.2)))?.sitting.handedInAt).toBeNull();
    const body = await anyAnswer(id, 2, minutesOn(1));
    const late = { desk: ada, sittingId: id, place: 2, key: `late-${++count}`, at: minutesOn(10.26) };
    expect(await server.takeReadAnswer(late, body)).toEqual({ error: 'sitting-closed' });
    const sitting = (await server.currentSitting(ada, id, minutesOn(30)))?.sitting;
    expect(sitting?.handedInAt).toEqual(minutesOn(10));
    expect((await listMarks(db, 'ada', id)).map(({ mark }) => mark.credit)).toEqual([1, 0, 0, 0, 0]);
  });

  test('is handed in once, though two tabs hand it in at the same time', async () => {
    const id = await check();
    await answer(id, 1);
    const both = await Promise.all([server.handIn(ada, id, minutesOn(2)), server.handIn(ada, id, minutesOn(3))]);
    expect(both).toEqual([true, true]);
    expect(await listMarks(db, 'ada', id)).toHaveLength(5);
  });

  test('that ran out of time while nobody looked is handed in with the others of its learner', async () => {
    const [id, ofBen] = [await check({ minutes: 10 }), await check({ minutes: 10 }, ben)];
    await server.handInOverdue(ada, minutesOn(60));
    const rows = await db.select().from(sittings);
    expect(rows.find((row) => row.id === id)?.handedInAt).toEqual(minutesOn(10));
    expect(rows.find((row) => row.id === ofBen)?.handedInAt).toBeNull();
  });
});

describe('where content has changed since a question was asked', () => {
  const age = (id: string, place: number) =>
    db
      .update(sittingQuestions)
      .set({ questionHash: `before ${place}` })
      .where(eq(sittingQuestions.sittingId, id));

  test('what is marked stays as it was asked, and what is open is asked anew', async () => {
    const id = await drill();
    await answer(id, 1);
    await server.askNext(ada, id, minutesOn(2));
    const before = await read(id);
    await age(id, 0);
    const places = await read(id, minutesOn(3));
    expect(places[0]).toEqual({ ...before[0], questionHash: 'before 0' });
    expect(places[1]?.seed).not.toBe(before[1]?.seed);
    expect(places[1]?.spec?.kind).toBe(before[1]?.spec?.kind);
    expect(await answer(id, 2, { at: minutesOn(4) })).toBeUndefined();
  });

  test('an answer to what was asked before does not count for what is asked now', async () => {
    const id = await check();
    await answer(id, 1);
    await age(id, 0);
    expect((await read(id, minutesOn(3)))[0]?.answer).toBeUndefined();
    await server.handIn(ada, id, minutesOn(4));
    expect((await listMarks(db, 'ada', id)).map(({ mark }) => mark.credit)).toEqual([0, 0, 0, 0, 0]);
  });

  test('a check whose time is over counts nothing that can no longer be drawn', async () => {
    const id = await check({ minutes: 10 });
    await answer(id, 1);
    await age(id, 0);
    await server.currentSitting(ada, id, minutesOn(30));
    expect(await db.select().from(questionMarks).where(eq(questionMarks.sittingId, id))).toEqual([]);
  });
});

describe('a review', () => {
  const cas = () => server.inventedDesk('cas', 'harbour');
  const days = (n: number) => minutesOn(n * 24 * 60);

  async function drilled(topic: string, at: Date): Promise<void> {
    const id = (await server.startDrill(wish(at, cas()), topic)) ?? '';
    const place = (await server.currentSitting(cas(), id, at))?.places[0];
    if (!place) throw new Error('Nothing is asked');
    const { question } = await server.askedQuestion(place);
    const given = answerQuestion(question, true, randomStream('review', topic));
    const request = { desk: cas(), sittingId: id, place: 1, key: `answer-${++count}`, at };
    expect(await server.takeReadAnswer(request, given)).toBeUndefined();
  }

  test('has nothing to ask somebody who was never asked', async () => {
    expect(await server.startReview(wish(start, server.inventedDesk('nobody', 'harbour')))).toBeUndefined();
  });

  test('asks what has been due longest first, and the weakest where nothing is due', async () => {
    await drilled('filtration', days(0));
    await drilled('fuel-quality', days(1));
    const topicAsked = async (at: Date) => {
      const id = (await server.startReview(wish(at, cas()))) ?? '';
      return (await server.currentSitting(cas(), id, at))?.places[0]?.spec?.topic;
    };
    expect(await topicAsked(days(5))).toBe('filtration');
    expect(await topicAsked(days(1))).toBe('filtration');
    const [early, late] = [await server.reviewCards(cas(), days(1)), await server.reviewCards(cas(), days(3))];
    expect([early.due.length, early.others.length, late.due.length, late.nextDay]).toEqual([0, 2, 2, undefined]);
  });
});

test('a question that somebody wrote is asked among the others once it is live, from its version', async () => {
  const named = { questionId: 'question-w', versionId: 'version-w' };
  const body = aWrittenQuestion('words', { topics: ['filtration'] });
  await together(db, [
    addingWrittenQuestion(db, { id: 'question-w', organizationId: 'harbour', createdBy: 'ina', createdAt: start }),
    addingDraft(db, { id: 'version-w', questionId: 'question-w', number: 1, body, writtenBy: 'ina', at: start }),
    sendingForReview(db, { ...named, personId: 'ina', at: start }),
  ]);
  expect(await claimThen(db, approvingVersion(db, { ...named, personId: 'udo', at: start }), [])).toBe(true);
  const id = await check({ questions: 40 });
  const written = (await read(id)).filter(({ writtenVersionId }) => writtenVersionId === 'version-w');
  expect(written).toHaveLength(1);
  const elsewhere = server.inventedDesk('ada', 'college');
  const there =
    (await server.startCheck(wish(start, elsewhere), { topics: ['filtration'], questions: 40, minutes: null })) ?? '';
  expect((await read(there)).some(({ writtenVersionId }) => writtenVersionId !== null)).toBe(false);
});
