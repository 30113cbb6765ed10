import { beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import {
  addingManualMark,
  countWaitingTexts,
  findFreeText,
  findOldestWaiting,
  listManualMarks,
  listMarkedTexts,
} from '@/db/queries/manual-marks';
import { addingDraft, addingWrittenQuestion } from '@/db/queries/written-questions';
import { questionMarks, sittingQuestions, sittings } from '@/db/schema';
import { claimThen, together } from '@/db/together';
import { questionFromWritten } from '@/lib/questions/written/question-from-written';
import type { WrittenForm } from '@/lib/questions/written/written-forms';
import { catalogue } from '../support/bench-rig';
import { addPersonOf, makeShopAndCollege, noon } from '../support/shop-rows';
import { testDatabase } from '../support/test-database';
import { aWrittenQuestion } from '../support/written-questions';

let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await makeShopAndCollege(db);
  await addPersonOf(db, 'ira', { harbour: 'instructor' });
});

const minutes = (n: number) => new Date(noon.getTime() + n * 60_000);

interface Answered {
  organizationId?: string;
  form?: WrittenForm;
  text?: string | null;
  at?: Date;
}

/** A sitting in which one written question was answered. */
async function addAnswered(
  id: string,
  { organizationId = 'harbour', form = 'words', text = 'Air.', at = noon }: Answered = {},
) {
  const body = aWrittenQuestion(form);
  await together(db, [
    addingWrittenQuestion(db, { id: `${id}-q`, organizationId, createdBy: 'ira', createdAt: noon }),
    addingDraft(db, { id: `${id}-v`, questionId: `${id}-q`, number: 1, body, writtenBy: 'ira', at: noon }),
  ]);
  await db.insert(sittings).values({
    id,
    learnerId: 'lea',
    organizationId,
    key: id,
    mode: 'drill',
    topics: [],
    createdAt: noon,
  });
  await db.insert(sittingQuestions).values({
    sittingId: id,
    place: 1,
    writtenVersionId: `${id}-v`,
    seed: 'x',
    questionVersion: 1,
    questionHash: '',
    askedAt: noon,
  });
  await db.insert(questionMarks).values({
    sittingId: id,
    place: 1,
    answer: text === null ? null : { form: 'words', text },
    asked: questionFromWritten(body, 'x', catalogue),
    mark: { credit: null, score: null, notes: [] },
    markedAt: at,
  });
}

function aMark(sittingId: string, seq = 1, score = 2) {
  return { sittingId, place: 1, seq, score, comment: 'Well put.', markedBy: 'ira', markedAt: minutes(seq) };
}

describe('answers that wait', () => {
  test('are free text of the organisation that nobody marked, the oldest first', async () => {
    await addAnswered('younger', { at: minutes(5) });
    await addAnswered('older', { at: minutes(1), text: 'Because.' });
    await addAnswered('not-answered', { text: null });
    await addAnswered('a-choice', { form: 'choice' });
    await addAnswered('theirs', { organizationId: 'college' });
    expect(await countWaitingTexts(db, 'harbour')).toBe(2);
    expect(await findOldestWaiting(db, 'harbour')).toMatchObject({
      sittingId: 'older',
      place: 1,
      learnerId: 'lea',
      demo: false,
      answer: { form: 'words', text: 'Because.' },
      asked: { steps: 3, key: { form: 'words', guidance: 'One mark for air.' } },
    });
    await claimThen(db, addingManualMark(db, aMark('older')), []);
    expect((await findOldestWaiting(db, 'harbour'))?.sittingId).toBe('younger');
    expect(await countWaitingTexts(db, 'harbour')).toBe(1);
  });

  test('of another organisation are not there', async () => {
    await addAnswered('theirs', { organizationId: 'college' });
    expect(await findOldestWaiting(db, 'harbour')).toBeUndefined();
    expect(await findFreeText(db, 'harbour', { sittingId: 'theirs', place: 1 })).toBeUndefined();
    expect(await findFreeText(db, 'college', { sittingId: 'theirs', place: 1 })).toBeDefined();
    expect(await findFreeText(db, 'college', { sittingId: 'theirs', place: 2 })).toBeUndefined();
    expect(await listMarkedTexts(db, 'harbour', 10)).toEqual([]);
  });
});

describe('marks', () => {
  test('are added and never changed; the last counts', async () => {
    await addAnswered('one');
    expect(await claimThen(db, addingManualMark(db, aMark('one')), [])).toBe(true);
    expect(await claimThen(db, addingManualMark(db, aMark('one', 2, 3)), [])).toBe(true);
    expect((await listManualMarks(db, { sittingId: 'one', place: 1 })).map(({ score }) => score)).toEqual([3, 2]);
    expect(await listMarkedTexts(db, 'harbour', 1)).toMatchObject([{ sittingId: 'one', score: 3, marker: 'ira' }]);
  });

  test('given by two at once are one', async () => {
    await addAnswered('one');
    expect(await claimThen(db, addingManualMark(db, aMark('one', 1, 1)), [])).toBe(true);
    expect(await claimThen(db, addingManualMark(db, aMark('one', 1, 3)), [])).toBe(false);
    expect(await listManualMarks(db, { sittingId: 'one', place: 1 })).toMatchObject([{ score: 1 }]);
  });
});
