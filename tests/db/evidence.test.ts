import { eq } from 'drizzle-orm';
import { beforeEach, describe, expect, test } from 'vitest';
import { readProgress } from '@/app/_server/evidence/read-progress';
import { freshenStates, rebuildStates } from '@/app/_server/evidence/read-states';
import { settleEvidence } from '@/app/_server/evidence/settle';
import type { Db } from '@/db/client';
import { recordAttempt } from '@/db/queries/attempts';
import { recordCall } from '@/db/queries/calls';
import { listEvidence } from '@/db/queries/evidence';
import { owingEvidence, owingObservation } from '@/db/queries/evidence-due';
import { givingPoints } from '@/db/queries/overrides';
import { marking } from '@/db/queries/question-marks';
import { addingRegrade, undoingRegrade } from '@/db/queries/regrades';
import { givingSecondMark } from '@/db/queries/second-marks';
import { evidence, evidenceDue, observations, organizations, safetyStates, topicStates, turnTasks } from '@/db/schema';
import { claimThen, together } from '@/db/together';
import { usualSettings } from '@/lib/accounts/settings';
import { spreadOf } from '@/lib/competency/posterior';
import { standingRevisions } from '@/lib/competency/revisions';
import { posteriorAt } from '@/lib/competency/tally';
import { fromBytes } from '@/lib/competency/tally-bytes';
import { randomStream } from '@/lib/random';
import type { Change } from '@/lib/regrading/change';
import { aNewCall, anAttempt } from '../support/attempt-rows';
import { aGradedCase } from '../support/graded-case';
import { addHandedIn, markText } from '../support/review-rows';
import { noon } from '../support/shop-rows';
import { aBody, aMark, begin } from '../support/sitting-rows';
import { testDatabase } from '../support/test-database';

const lea = { organizationId: 'harbour', learnerId: 'lea' };
const { grade } = aGradedCase();
let db: Db;

/** Lea handed in free text of three steps on filtration, and called a case elsewhere. */
beforeEach(async () => {
  db = testDatabase();
  await addHandedIn(db);
  await together(db, [owingEvidence(db, { ...lea, work: 'sitting questions 1', since: noon })]);
  await practise('first');
});

async function practise(id: string, caseCode = `CASE-${id}`, calledAt = noon): Promise<void> {
  await recordAttempt(db, anAttempt({ id, ...lea, key: id, caseCode }));
  await recordCall(db, 'lea', aNewCall({ attemptId: id, key: id, grade, calledAt }));
}

async function ask(id: string, minutes: number, topics: readonly string[], credit: number): Promise<void> {
  await begin(db, { id, ...lea, key: id });
  const markedAt = new Date(noon.getTime() + minutes * 60_000);
  const mark = { credit, score: credit, notes: [] };
  await together(db, [marking(db, aMark({ sittingId: id, asked: { ...aBody, topics }, mark, markedAt }))]);
}

const standing = async (work: string) =>
  standingRevisions(await listEvidence(db, lea, { works: [work] })).filter(({ counts }) => counts);
const settled = () => settleEvidence(db, lea);

/** What Lea has shown, as it is read for a board. */
const read = async () => {
  await freshenStates(db, 'harbour', ['lea']);
  const { rows, safety } = await kept();
  return { topics: new Map(rows.map((row) => [row.topic, row])), safety: safety[0]?.recent ?? [] };
};

/** As kept, topic by topic, without what a rebuild may not move. */
const kept = async () => {
  const rows = await db.select().from(topicStates).where(eq(topicStates.learnerId, 'lea'));
  const safety = await db.select().from(safetyStates).where(eq(safetyStates.learnerId, 'lea'));
  return { rows: rows.sort((a, b) => (a.topic < b.topic ? -1 : 1)), safety };
};

async function expectAsRebuilt(): Promise<void> {
  const before = await kept();
  await rebuildStates(db, lea);
  expect(await kept()).toEqual(before);
}

test('a call owes its evidence, which is written once', async () => {
  expect((await db.select().from(evidenceDue)).map(({ work }) => work).sort()).toEqual([
    'attempt case',
    'attempt first',
    'sitting questions 1',
  ]);
  await settled();
  expect(await db.select().from(evidenceDue)).toEqual([]);
  expect(await standing('attempt first')).toMatchObject([
    { topic: 'instruments-and-uncertainty', score: 4 },
    { topic: 'priming-and-lift-pump', score: 4, purpose: 'practice', exposure: 'case CASE-first' },
    { topic: 'reasoning-and-repair-proof', score: 4 },
  ]);
  const count = await db.$count(evidence);
  await together(db, [owingEvidence(db, { ...lea, work: 'attempt first', since: noon })]);
  await settled();
  expect(await db.$count(evidence)).toBe(count);
});

test('what was marked in a process that ended before it was settled is written by whoever reads next', async () => {
  await freshenStates(db, 'harbour');
  const { topics, safety } = await read();
  expect([...topics.keys()]).toContain('priming-and-lift-pump');
  expect(safety).toMatchObject([{ events: 0 }, { events: 0 }]);
});

test('two at once write nothing twice', async () => {
  await Promise.all([settled(), settled(), settleEvidence(db, { organizationId: 'harbour' })]);
  const rows = await db.select().from(evidence);
  expect(new Set(rows.map(({ work, topic }) => `${work} ${topic}`)).size).toBe(rows.length);
  await expectAsRebuilt();
});

test('what cannot be derived stays owed and holds nothing else up', async () => {
  await together(db, [owingEvidence(db, { ...lea, work: 'nonsense', since: new Date(0) })]);
  await settled();
  expect((await db.select().from(evidenceDue)).map(({ work }) => work)).toEqual(['nonsense']);
  expect(await standing('attempt first')).not.toEqual([]);
});

describe('a mark that changes', () => {
  beforeEach(settled);

  test('adds a revision, and leaves the one before as it was', async () => {
    const given = { id: 'one', attemptId: 'first', part: 'verdicts' as const, points: 0 };
    await together(db, givingPoints(db, { ...given, reason: 'Copied', givenBy: 'ira', givenAt: noon }));
    await settled();
    const on = await listEvidence(db, lea, { works: ['attempt first'], topics: ['priming-and-lift-pump'] });
    expect(on.map(({ revision, score }) => [revision, score])).toEqual([
      [1, 4],
      [2, 3],
    ]);
    await expectAsRebuilt();
  });

  test('for everybody counts until it is undone', async () => {
    const change: Change = { kind: 'withdraw', place: 1 };
    const made = { id: 'change', assignmentId: 'week-one', change, reason: 'Unclear', madeBy: 'ira', madeAt: noon };
    const { claim, others } = addingRegrade(db, made);
    await claimThen(db, claim, others);
    const before = await standing('attempt case');
    expect(before).not.toEqual([]);
    await settled();
    expect(await standing('attempt case')).toEqual([]);
    await expectAsRebuilt();
    const undone = undoingRegrade(db, { id: 'change', assignmentId: 'week-one', undoneBy: 'ira', undoneAt: noon });
    await claimThen(db, undone.claim, undone.others);
    await settled();
    expect((await standing('attempt case')).map(({ topic }) => topic)).toEqual(before.map(({ topic }) => topic));
    await expectAsRebuilt();
  });

  test('by a person counts once they gave it, and what they gave last', async () => {
    expect(await standing('sitting questions 1')).toEqual([]);
    await markText(db, 'ira', 3);
    await settled();
    expect(await standing('sitting questions 1')).toMatchObject([{ topic: 'filtration', score: 3 }]);
    await markText(db, 'ira', 1, 2);
    await settled();
    expect(await standing('sitting questions 1')).toMatchObject([{ score: 1, revision: 2 }]);
  });
});

test('free text that two people mark counts once both have', async () => {
  db = testDatabase();
  await addHandedIn(db, { secondMarker: true });
  await markText(db, 'ira', 2);
  await settled();
  expect(await standing('sitting questions 1')).toEqual([]);
  const second = { sittingId: 'questions', place: 1, score: 3, comment: '', markedBy: 'ida', markedAt: noon };
  await together(db, [givingSecondMark(db, second)]);
  await settled();
  expect(await standing('sitting questions 1')).toMatchObject([{ score: 2 }]);
});

test('a hands-on check counts until it is taken back', async () => {
  const item = { id: 'bleed', topic: 'filtration', text: 'Bleeds it', outOf: 4, pass: 3, score: 3 };
  await db.insert(observations).values({
    ...{ id: 'seen', ...lea, items: [item], unsafe: true, comment: '', observedBy: 'ira' },
    ...{ observedAt: noon, writtenAt: noon },
  });
  await together(db, [owingObservation(db, 'seen', noon)]);
  expect((await read()).safety.map(({ events }) => events)).toContain(1);
  expect(await standing('observation seen')).toMatchObject([{ score: 3, purpose: 'observed' }]);
  await db.update(observations).set({ takenBackAt: noon, takenBackBy: 'ira', takenBackReason: 'Another person' });
  await together(db, [owingObservation(db, 'seen', noon)]);
  expect((await read()).safety.map(({ events }) => events)).not.toContain(1);
  expect(await standing('observation seen')).toEqual([]);
});

test('a case met before counts once', async () => {
  await practise('again', 'CASE-first', new Date(noon.getTime() + 60_000));
  const { topics, safety } = await read();
  expect(topics.get('priming-and-lift-pump')).toMatchObject({ count: 2, cases: 2 });
  expect(safety).toHaveLength(2);
});

test('the log takes no change and lets nothing but its learner move', async () => {
  await settled();
  await expect(async () => db.update(evidence).set({ score: 0 })).rejects.toThrow();
  await db.update(evidence).set({ learnerId: 'ida' });
  expect(await db.$count(evidence, eq(evidence.learnerId, 'lea'))).toBe(0);
});

test('evidence fades by the half-life of the organisation, as soon as that is changed', async () => {
  const at = noon.getTime() + 360 * 86_400_000;
  const spread = async (evidenceHalfLifeDays: number) => {
    await db.update(organizations).set({ settings: { ...usualSettings, evidenceHalfLifeDays } });
    const row = (await read()).topics.get('priming-and-lift-pump');
    if (!row) return Number.NaN;
    const tally = { ...row, at: row.at.getTime(), sum: fromBytes(row.sum) };
    return spreadOf(posteriorAt(tally, at, row.halfLifeDays));
  };
  const usual = await spread(180);
  expect(await spread(3650)).toBeLessThan(usual);
  expect(await spread(30)).toBeGreaterThan(usual);
});

test('whatever comes in which order, states are what the log says from its first row to its last', async () => {
  const draw = randomStream('orders of evidence', 'a');
  const whole = (below: number) => Math.floor(draw.between(0, below));
  const acts: (() => Promise<void>)[] = [];
  for (let n = 0; n < 6; n++) {
    acts.push(() => ask(`q${n}`, whole(10), ['filtration', 'fuel-quality'], whole(2)));
    acts.push(() => practise(`c${n}`, `CASE-${n % 3}`, new Date(noon.getTime() + whole(10) * 60_000)));
    acts.push(() =>
      together(
        db,
        givingPoints(db, {
          ...{ id: `g${n}`, attemptId: 'first', part: 'reasons', points: whole(26), reason: 'Heard' },
          ...{ givenBy: 'ira', givenAt: new Date(noon.getTime() + n) },
        }),
      ),
    );
  }
  for (const act of acts
    .map((act) => ({ act, at: draw.next() }))
    .sort((a, b) => a.at - b.at)
    .map(({ act }) => act)) {
    await act();
    if (draw.next() < 0.5) await settled();
  }
  await settled();
  await expectAsRebuilt();
});

test('the order in which the same answers come in does not matter', async () => {
  const topics = ['filtration'];
  const sums = [];
  for (const order of [
    [1, 2, 3],
    [3, 1, 2],
  ]) {
    db = testDatabase();
    await addHandedIn(db);
    for (const n of order) {
      await ask(`q${n}`, n, topics, n % 2);
      await settled();
    }
    const [row] = await db.select().from(topicStates).where(eq(topicStates.topic, 'filtration'));
    sums.push(row);
  }
  expect(sums[0]).toEqual(sums[1]);
});

test('a question of an assignment that is withdrawn counts for nobody', async () => {
  await markText(db, 'ira', 3);
  await settled();
  expect(await db.select().from(turnTasks)).toHaveLength(2);
  const change: Change = { kind: 'withdraw', place: 2 };
  const { claim, others } = addingRegrade(db, {
    ...{ id: 'change', assignmentId: 'week-one', change, reason: 'Unclear', madeBy: 'ira', madeAt: noon },
  });
  await claimThen(db, claim, others);
  await settled();
  expect(await standing('sitting questions 1')).toEqual([]);
});

test('what is marked without names stands beside nobody’s until names are back', async () => {
  db = testDatabase();
  await addHandedIn(db, { anonymous: true });
  await practise('first');
  const works = async (by: 'learner' | 'staff', now = noon) =>
    [...(await readProgress(db, lea, { now, by })).values()].flatMap(({ shown }) => shown.map(({ work }) => work));
  expect(new Set(await works('learner'))).toEqual(new Set(['attempt case', 'attempt first']));
  expect(new Set(await works('staff'))).toEqual(new Set(['attempt first']));
});
