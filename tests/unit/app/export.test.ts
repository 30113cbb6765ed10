import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { csvExport } from '@/app/_server/account/csv-export';
import { everythingHeldOn } from '@/app/_server/account/everything-held-on';
import { jsonExport } from '@/app/_server/account/json-export';
import { csvHead, csvLines } from '@/app/_server/csv';
import type { Db } from '@/db/client';
import { recordAct } from '@/db/queries/acts';
import { recordAttempt } from '@/db/queries/attempts';
import { recordCall } from '@/db/queries/calls';
import { addingLogEntry } from '@/db/queries/log-entries';
import { addingManualMark } from '@/db/queries/manual-marks';
import { addingMember } from '@/db/queries/members';
import { addingOrganization } from '@/db/queries/organizations';
import { marking } from '@/db/queries/question-marks';
import { answering } from '@/db/queries/sitting-answers';
import { askingQuestion } from '@/db/queries/sitting-questions';
import { addingSitting } from '@/db/queries/sittings';
import { addingCredential, addingUser } from '@/db/queries/users';
import { addingDraft, addingWrittenQuestion } from '@/db/queries/written-questions';
import { invitations, sessions } from '@/db/schema';
import { together } from '@/db/together';
import { aFinding, aGrade, aNewCall, anAct, anAttempt, aReading } from '../../support/attempt-rows';
import { aMember, anOrganization, aUser } from '../../support/people-rows';
import { aBody, aMark, anAnswer, aPlace, aSitting, begin } from '../../support/sitting-rows';
import { testDatabase } from '../../support/test-database';
import { aWrittenQuestion } from '../../support/written-questions';

const at = new Date(Date.UTC(2026, 2, 5, 8));

/** Ada learns at the harbour and at the college, Ben at the harbour. */
async function twoPlaces(): Promise<Db> {
  const db = testDatabase();
  await together(db, [
    addingOrganization(db, anOrganization()),
    addingOrganization(db, anOrganization({ id: 'college', name: 'Hill College', slug: 'college' })),
    addingUser(db, aUser()),
    addingUser(db, aUser({ id: 'ben', name: 'Ben Boat', email: 'ben@harbour.example' })),
    addingCredential(db, { userId: 'ada', hash: 'salt:HASHED', at }),
    addingMember(db, aMember()),
    addingMember(db, aMember({ id: 'ada-at-college', organizationId: 'college', deactivatedAt: at })),
    addingMember(db, aMember({ id: 'ben-at-harbour', userId: 'ben' })),
  ]);
  return db;
}

async function signIn(db: Db, userId: string, organizationId: string): Promise<void> {
  await db.insert(sessions).values({
    id: `session-${userId}-${organizationId}`,
    token: `TOKEN-${userId}-${organizationId}`,
    userId,
    activeOrganizationId: organizationId,
    ipAddress: '10.0.0.7',
    userAgent: 'A browser',
    expiresAt: new Date(Date.UTC(2027, 0)),
    createdAt: at,
    updatedAt: at,
  });
}

async function exported(
  db: Db,
  format: 'json' | 'csv',
  { personId = 'ada', organizationId }: { personId?: string; organizationId?: string } = {},
): Promise<string> {
  const held = await everythingHeldOn(db, personId, at, organizationId);
  if (!held) throw new Error(`Nothing is held on ${personId}`);
  const pieces = format === 'json' ? jsonExport(held, at) : csvExport(held);
  let text = '';
  for await (const piece of pieces) text += piece;
  return text;
}

/** Rows of a CSV text by its columns. */
function rowsOf(csv: string): Record<string, string>[] {
  const { data, errors } = Papa.parse<Record<string, string>>(csv.replace(/^\uFEFF/, ''), {
    header: true,
    skipEmptyLines: true,
  });
  expect(errors).toEqual([]);
  return data;
}

test('a person takes away what is held on them in every organisation, those that closed to them too', async () => {
  const db = await twoPlaces();
  await recordAttempt(db, anAttempt({ organizationId: 'harbour' }));
  await recordAttempt(db, anAttempt({ id: 'attempt-b', key: 'start-b', organizationId: 'college' }));
  await recordAct(db, 'ada', anAct());
  await signIn(db, 'ada', 'harbour');
  await together(db, [
    addingLogEntry(db, { at, organizationId: 'harbour', actorId: 'ben', event: 'pin-set', personId: 'ada' }),
    addingLogEntry(db, { at, organizationId: 'college', actorId: 'ada', event: 'signed-in', personId: 'ada' }),
    addingLogEntry(db, { at, organizationId: 'harbour', actorId: 'ben', event: 'signed-in', personId: 'ben' }),
  ]);
  const held = JSON.parse(await exported(db, 'json'));
  expect(held.account).toMatchObject({ personId: 'ada', name: 'Ada', signInName: 'ada@harbour' });
  expect(held.memberships.map((one: { organization: string }) => one.organization).sort()).toEqual([
    'Harbour Diesel',
    'Hill College',
  ]);
  expect(held.sessions).toMatchObject([{ address: '10.0.0.7', device: 'A browser' }]);
  expect(held.attempts.map((one: { attemptId: string }) => one.attemptId)).toEqual(['attempt-a', 'attempt-b']);
  expect(held.attempts[0].acts).toMatchObject([{ seq: 1, kind: 'reading', check: 'prime-pressure' }]);
  expect(held.log.map((one: { event: string }) => one.event)).toEqual(['pin-set', 'signed-in']);
});

test('an administrator gets what is held in their organisation and nothing of another', async () => {
  const db = await twoPlaces();
  await recordAttempt(db, anAttempt({ organizationId: 'harbour' }));
  await recordAttempt(db, anAttempt({ id: 'attempt-b', key: 'start-b', organizationId: 'college' }));
  await signIn(db, 'ada', 'harbour');
  await signIn(db, 'ada', 'college');
  await together(db, [
    addingLogEntry(db, { at, organizationId: 'college', actorId: 'ada', event: 'signed-in', personId: 'ada' }),
    addingLogEntry(db, { at, organizationId: 'harbour', actorId: 'ada', event: 'signed-in', personId: 'ada' }),
  ]);
  const here = { organizationId: 'harbour' };
  const json = await exported(db, 'json', here);
  const held = JSON.parse(json);
  expect([held.memberships, held.sessions, held.attempts, held.log].map((list) => list.length)).toEqual([1, 1, 1, 1]);
  expect(json).not.toMatch(/college/i);
  expect(await exported(db, 'csv', here)).not.toMatch(/college/);
});

test('nothing that opens a door is taken away, and nobody else’s name or address', async () => {
  const db = await twoPlaces();
  await signIn(db, 'ada', 'harbour');
  await db.insert(invitations).values({
    id: 'invitation-a',
    organizationId: 'harbour',
    inviterId: 'ada',
    email: 'guest@quay.example',
    role: 'learner',
    status: 'pending',
    expiresAt: at,
    createdAt: at,
    tokenHash: 'TOKEN-HASH',
  });
  await together(db, [
    addingLogEntry(db, { at, organizationId: 'harbour', actorId: 'ada', event: 'pin-set', personId: 'ben' }),
  ]);
  const json = await exported(db, 'json');
  expect(JSON.parse(json).log).toMatchObject([{ event: 'pin-set', personId: 'ben' }]);
  expect(JSON.parse(json).invitations).toMatchObject([{ invitationId: 'invitation-a' }]);
  expect(json).not.toMatch(/TOKEN|HASHED|quay|Ben Boat|ben@harbour/);
});

test.each(['json', 'csv'] as const)(
  'two open attempts that differ in what is hidden are the same in %s',
  async (format) => {
    const told = [];
    for (const hidden of [
      { difficulty: 1.234, features: { checks: 4, conditions: 3, closeness: 2.1, lookAlikes: 2, masked: false } },
      { difficulty: -0.567, features: { checks: 9, conditions: 1, closeness: 0.3, lookAlikes: 5, masked: true } },
    ]) {
      const db = await twoPlaces();
      await recordAttempt(db, anAttempt({ organizationId: 'harbour', ...hidden }));
      await recordAct(db, 'ada', anAct());
      told.push(await exported(db, format));
    }
    expect(told[0]).toContain('AAA-AAAA-AA');
    expect(told[0]).toBe(told[1]);
  },
);

test('an open attempt has no grade, cause or difficulty under any name', async () => {
  const db = await twoPlaces();
  await recordAttempt(db, anAttempt({ organizationId: 'harbour', difficulty: 1.234 }));
  await recordAct(db, 'ada', anAct());
  const [attempt] = JSON.parse(await exported(db, 'json')).attempts;
  expect(attempt.closed).toBeNull();
  expect(JSON.stringify(attempt)).not.toMatch(/cause|severity|truth|difficulty|features|grade|1\.234/);
});

test('a closed attempt comes with its call, its grade and how hard it was', async () => {
  const db = await twoPlaces();
  await recordAttempt(db, anAttempt({ organizationId: 'harbour', difficulty: 1.234 }));
  await recordCall(db, 'ada', aNewCall());
  const [attempt] = JSON.parse(await exported(db, 'json')).attempts;
  expect(attempt.closed).toMatchObject({ call: { cause: 'lift-pump-weak' }, grade: aGrade, difficulty: 1.234 });
});

test.each(['json', 'csv'] as const)(
  'two open checks whose questions differ in seed, key and all that follows from them are the same in %s',
  async (format) => {
    const told = [];
    for (const seed of ['maple', 'oak']) {
      const db = await twoPlaces();
      const sitting = aSitting({ organizationId: 'harbour', createdAt: at });
      const spec = { kind: 'judge' as const, topic: 'filtration', seed };
      await together(db, [
        addingSitting(db, sitting),
        askingQuestion(db, aPlace({ spec, seed, askedAt: at })),
        answering(db, 'ada', anAnswer({ answeredAt: at, openAt: at, askedAt: at })),
      ]);
      told.push(await exported(db, format));
    }
    expect(told[0]).toContain('sitting-a');
    expect(told[0]).toBe(told[1]);
    expect(told[0]).not.toMatch(/maple|seed|"key"|explanation/);
  },
);

test('a question comes with key, explanation and mark once it is marked, and without what is for the marker', async () => {
  const db = await twoPlaces();
  const key = { form: 'words', model: 'Air came in.', guidance: 'FOR THE MARKER' } as const;
  const asked = { ...aBody, answer: { form: 'words', most: 100 } as const, key, steps: 3 };
  const answer = { form: 'words', text: 'Air, "I think"' } as const;
  const mark = { credit: null, score: null, notes: [] };
  await begin(db, {}, 2);
  await together(db, [
    answering(db, 'ada', anAnswer({ body: answer })),
    marking(db, aMark({ asked, answer, mark })),
    addingManualMark(db, {
      sittingId: 'sitting-a',
      place: 1,
      seq: 1,
      score: 2,
      comment: 'Where?',
      markedBy: 'ben',
      markedAt: at,
    }),
  ]);
  const json = await exported(db, 'json');
  const [first, second] = JSON.parse(json).sittings[0].questions;
  expect(first).toMatchObject({ kind: 'judge', answers: [{ seq: 1, answer }] });
  expect(first.marked).toMatchObject({
    asked: { key: { model: 'Air came in.' } },
    byHand: { score: 2, comment: 'Where?' },
  });
  expect(second).toMatchObject({ place: 2, marked: null });
  expect(json).not.toContain('FOR THE MARKER');
  const rows = rowsOf(await exported(db, 'csv'));
  expect(
    rows.map(({ kind, place, answer, points, steps, words }) => [kind, place, answer, points, steps, words]),
  ).toEqual([
    ['start', '', '', '', '', ''],
    ['answer', '1', 'Air, "I think"', '', '', ''],
    ['mark', '1', 'Air, "I think"', '2', '3', 'Where?'],
  ]);
});

test('who writes and marks questions takes along what they wrote and gave, and nobody’s answers', async () => {
  const db = await twoPlaces();
  await begin(db);
  await together(db, [
    marking(db, aMark({ answer: { form: 'words', text: 'WHAT ADA WROTE' } })),
    addingManualMark(db, {
      sittingId: 'sitting-a',
      place: 1,
      seq: 1,
      score: 1,
      comment: 'Good',
      markedBy: 'ben',
      markedAt: at,
    }),
    addingWrittenQuestion(db, { id: 'question-a', organizationId: 'harbour', createdBy: 'ben', createdAt: at }),
    addingDraft(db, { id: 'v', questionId: 'question-a', number: 1, body: aWrittenQuestion(), writtenBy: 'ben', at }),
  ]);
  const json = await exported(db, 'json', { personId: 'ben' });
  const held = JSON.parse(json);
  expect(held.questionsWritten).toMatchObject([
    { questionId: 'question-a', body: { title: aWrittenQuestion().title } },
  ]);
  expect(held.marksGiven).toMatchObject([{ score: 1, comment: 'Good' }]);
  expect(json).not.toMatch(/WHAT ADA WROTE|sitting-a/);
});

test('the file of acts has a line for each thing that was done, with what it says', async () => {
  const db = await twoPlaces();
  await recordAttempt(db, anAttempt({ organizationId: 'harbour' }));
  const codes = aReading({
    check: 'trouble-codes',
    instrument: 'code-list',
    shown: [{ kind: 'codes', quantity: 'codes', codes: [{ spn: 94, fmi: 18 }] }],
  });
  const bodies = [aReading(), aFinding({ words: 'low, "far" too low' }), codes];
  for (const [i, body] of bodies.entries()) await recordAct(db, 'ada', anAct({ seq: i + 1, key: `act-${i}`, body }));
  await recordCall(db, 'ada', aNewCall({ seq: 4 }));
  const rows = rowsOf(await exported(db, 'csv'));
  expect(rows.map(({ kind }) => kind)).toEqual(['start', 'reading', 'finding', 'reading', 'call']);
  expect(rows[1]).toMatchObject({ case: 'AAA-AAAA-AA', check: 'prime-pressure', value: '6.5', unit: 'psi' });
  expect(rows[2]).toMatchObject({ verdict: 'fail', suspects: 'priming', words: 'low, "far" too low' });
  expect(rows[3]).toMatchObject({ value: 'SPN 94 FMI 18' });
  expect(rows[4]).toMatchObject({ cause: 'lift-pump-weak', repair: 'replace-lift-pump', total: '71' });
});

test('points stand beside the act that won or lost them, once', async () => {
  const db = await twoPlaces();
  await recordAttempt(db, anAttempt({ organizationId: 'harbour' }));
  const { shown } = aReading();
  await recordAct(db, 'ada', anAct({ body: aReading({ shown: [...shown, ...shown] }) }));
  await recordAct(db, 'ada', anAct({ seq: 2, key: 'act-2', body: aFinding() }));
  const notes = [
    { part: 'verdicts', code: 'a', values: { seq: 1, finding: 2 }, points: 12.1 },
    { part: 'reasons', code: 'b', values: { finding: 2 }, points: -0.2 },
    { part: 'route', code: 'c', values: { seq: 1 }, points: 3 },
    { part: 'call', code: 'd', values: {}, points: 20 },
  ] as const;
  await recordCall(db, 'ada', aNewCall({ seq: 3, grade: { ...aGrade, notes } }));
  const rows = rowsOf(await exported(db, 'csv'));
  expect(rows.map(({ kind, points }) => [kind, points])).toEqual([
    ['start', ''],
    ['reading', '3'],
    ['reading', ''],
    ['finding', '11.9'],
    ['call', ''],
  ]);
});

test('somebody who has done nothing has a file of acts with its columns alone', async () => {
  const csv = await exported(await twoPlaces(), 'csv', { personId: 'ben' });
  expect(csv.trim().split('\r\n')).toHaveLength(1);
});

test('there is nothing to export on nobody', async () => {
  expect(await everythingHeldOn(await twoPlaces(), 'eve', at)).toBeUndefined();
});

test.each([
  '=1+1',
  '+1',
  '-1',
  '@SUM(A1)',
  '\t=1+1',
  '\r=1+1',
  '\n=1+1',
  '\tx',
  ' =1+1',
  '=1+1\nmore',
  '-1\r\nmore',
  '＝1+1',
])('a spreadsheet takes the text %j for a text', (text) => {
  const [[cell = ''] = []] = Papa.parse<string[]>(csvLines([[text]]), { skipEmptyLines: true }).data;
  expect(cell).toBe(`'${text}`);
});

test.each(['6.5 psi', 'a=b', '<b>bold</b>', 'low, "far" too low', "it's"])('the text %j stays as it is', (text) => {
  const [[cell = ''] = []] = Papa.parse<string[]>(csvLines([[text]])).data;
  expect(cell).toBe(text);
});

test('a negative number stays a number', () => {
  expect(csvLines([[-3.5, null, true]])).toBe('-3.5,,true\r\n');
});

test('a CSV file says that it is UTF-8, once', () => {
  expect(csvHead(['a', 'b'])).toBe('\uFEFFa,b\r\n');
});
