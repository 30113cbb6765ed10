import { beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import {
  addingDraft,
  addingWrittenQuestion,
  approvingVersion,
  changingDraft,
  countWrittenQuestions,
  findQuestionsOrganization,
  findVersion,
  listLiveVersions,
  listVersions,
  listWrittenQuestions,
  retiringOthers,
  retiringVersion,
  sendingBack,
  sendingForReview,
} from '@/db/queries/written-questions';
import { sittingQuestions, sittings } from '@/db/schema';
import { claimThen, type Statement, together } from '@/db/together';
import type { WrittenQuestion } from '@/lib/questions/written/written-question';
import { addPersonOf, makeShopAndCollege, noon } from '../support/shop-rows';
import { testDatabase } from '../support/test-database';
import { aWrittenQuestion } from '../support/written-questions';

let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await makeShopAndCollege(db);
  await addPersonOf(db, 'ira', { harbour: 'instructor' });
  await addPersonOf(db, 'rho', { harbour: 'instructor' });
});

const hours = (n: number) => new Date(noon.getTime() + n * 3_600_000);

/** Ira's act at a version of a question, or somebody else's. */
function act(questionId: string, number = 1, personId = 'ira', at = hours(number)) {
  return { questionId, versionId: `${questionId}-${number}`, personId, at };
}

async function addDraft(
  questionId: string,
  { organizationId = 'harbour', number = 1, body = aWrittenQuestion() as WrittenQuestion, writtenBy = 'ira' } = {},
): Promise<void> {
  await together(db, [
    addingWrittenQuestion(db, { id: questionId, organizationId, createdBy: writtenBy, createdAt: noon }),
    addingDraft(db, { id: `${questionId}-${number}`, questionId, number, body, writtenBy, at: hours(number) }),
  ]);
}

/** Whether a statement changed something. */
const changes = (statement: Statement) => claimThen(db, statement, []);

async function makeLive(questionId: string, number = 1): Promise<void> {
  await changes(sendingForReview(db, act(questionId, number)));
  const approval = act(questionId, number, 'rho');
  expect(await claimThen(db, approvingVersion(db, approval), [retiringOthers(db, approval)])).toBe(true);
}

const statesOf = async (questionId: string) => (await listVersions(db, questionId)).map(({ state }) => state);

describe('a draft', () => {
  test('is its question’s first version, made once', async () => {
    await addDraft('q');
    await addDraft('q', { body: aWrittenQuestion('words') });
    expect(await listVersions(db, 'q')).toMatchObject([
      { id: 'q-1', number: 1, state: 'draft', form: 'choice', topics: ',filtration,', body: aWrittenQuestion() },
    ]);
    expect(await findQuestionsOrganization(db, 'q')).toBe('harbour');
    expect(await findQuestionsOrganization(db, 'none')).toBeUndefined();
  });

  test('is changed by whoever wrote it, and by nobody else', async () => {
    await addDraft('q');
    const body = aWrittenQuestion('words', { title: 'Another', topics: ['fuel-quality'] });
    expect(await changes(changingDraft(db, act('q', 1, 'rho'), body))).toBe(false);
    expect(await changes(changingDraft(db, { ...act('q'), questionId: 'other' }, body))).toBe(false);
    expect(await changes(changingDraft(db, act('q'), body))).toBe(true);
    expect(await listVersions(db, 'q')).toMatchObject([
      { title: 'Another', form: 'words', topics: ',fuel-quality,', body },
    ]);
  });

  test('that somebody was asked never changes again', async () => {
    await addDraft('q');
    await db.insert(sittings).values({
      id: 's',
      learnerId: 'lea',
      organizationId: 'harbour',
      key: 'k',
      mode: 'drill',
      topics: [],
      createdAt: noon,
    });
    await db.insert(sittingQuestions).values({
      sittingId: 's',
      place: 1,
      writtenVersionId: 'q-1',
      seed: 'x',
      questionVersion: 1,
      questionHash: '',
      askedAt: noon,
    });
    expect(await changes(changingDraft(db, act('q'), aWrittenQuestion('words')))).toBe(false);
  });
});

describe('a review', () => {
  test('is asked for by whoever wrote it', async () => {
    await addDraft('q');
    expect(await changes(sendingForReview(db, act('q', 1, 'rho')))).toBe(false);
    expect(await changes(sendingForReview(db, act('q')))).toBe(true);
    expect(await changes(sendingForReview(db, act('q')))).toBe(false);
    expect(await statesOf('q')).toEqual(['in-review']);
  });

  test('freezes what it is about', async () => {
    await addDraft('q');
    await changes(sendingForReview(db, act('q')));
    expect(await changes(changingDraft(db, act('q'), aWrittenQuestion('words')))).toBe(false);
    expect(await changes(retiringVersion(db, act('q')))).toBe(false);
  });

  test('is never passed by whoever wrote it', async () => {
    await addDraft('q');
    await changes(sendingForReview(db, act('q')));
    expect(await changes(approvingVersion(db, act('q')))).toBe(false);
    expect(await statesOf('q')).toEqual(['in-review']);
    expect(await changes(approvingVersion(db, act('q', 1, 'rho')))).toBe(true);
    expect(await listVersions(db, 'q')).toMatchObject([{ state: 'live', reviewedBy: 'rho', writtenBy: 'ira' }]);
  });

  test('passes nothing that is not in review', async () => {
    await addDraft('q');
    expect(await changes(approvingVersion(db, act('q', 1, 'rho')))).toBe(false);
  });

  test('may end in a note, with which it is a draft again', async () => {
    await addDraft('q');
    await changes(sendingForReview(db, act('q')));
    expect(await changes(sendingBack(db, act('q', 1, 'rho'), 'Two are right.'))).toBe(true);
    expect(await listVersions(db, 'q')).toMatchObject([{ state: 'draft', reviewNote: 'Two are right.' }]);
    expect(await changes(changingDraft(db, act('q'), aWrittenQuestion('words')))).toBe(true);
    await makeLive('q');
    expect(await listVersions(db, 'q')).toMatchObject([{ state: 'live', reviewNote: null }]);
  });
});

describe('a new version', () => {
  test('is a draft beside the live one, and takes its place once it is approved', async () => {
    await addDraft('q');
    await makeLive('q');
    await addDraft('q', { number: 2 });
    expect(await statesOf('q')).toEqual(['draft', 'live']);
    expect(await changes(changingDraft(db, act('q'), aWrittenQuestion('words')))).toBe(false);
    await makeLive('q', 2);
    expect(await statesOf('q')).toEqual(['live', 'retired']);
    expect((await listLiveVersions(db, 'harbour')).map(({ id }) => id)).toEqual(['q-2']);
    expect(await findVersion(db, 'q-1')).toMatchObject({ state: 'retired', organizationId: 'harbour' });
  });

  test('begun by two at once is one', async () => {
    await addDraft('q');
    await makeLive('q');
    const draft = { questionId: 'q', number: 2, body: aWrittenQuestion(), at: noon };
    expect(await changes(addingDraft(db, { ...draft, id: 'by-ira', writtenBy: 'ira' }))).toBe(true);
    expect(await changes(addingDraft(db, { ...draft, id: 'by-rho', writtenBy: 'rho' }))).toBe(false);
  });

  test('leaves other questions live', async () => {
    for (const id of ['p', 'q']) {
      await addDraft(id);
      await makeLive(id);
    }
    await addDraft('q', { number: 2 });
    await makeLive('q', 2);
    expect(await statesOf('p')).toEqual(['live']);
  });
});

test('a question that is retired is not asked any more', async () => {
  await addDraft('q');
  await makeLive('q');
  expect(await changes(retiringVersion(db, act('q', 1, 'rho')))).toBe(true);
  expect(await changes(retiringVersion(db, act('q', 1, 'rho')))).toBe(false);
  expect(await listLiveVersions(db, 'harbour')).toEqual([]);
});

describe('what an organisation has', () => {
  beforeEach(async () => {
    await addDraft('a', { body: aWrittenQuestion('choice', { title: '100 % sure?' }) });
    await addDraft('b', { body: aWrittenQuestion('words', { title: 'Why', topics: ['fuel-quality', 'filtration'] }) });
    await makeLive('b');
    await addDraft('b', { number: 2, body: aWrittenQuestion('words', { title: 'Why now' }) });
    await addDraft('theirs', { organizationId: 'college', body: aWrittenQuestion('choice', { title: 'Theirs' }) });
  });

  const titles = async (filter: Parameters<typeof listWrittenQuestions>[2], organizationId = 'harbour') =>
    (await listWrittenQuestions(db, organizationId, filter, 50)).map(({ title, state }) => `${title} ${state}`).sort();

  test('is the newest version of each question and the live one, and nobody else’s', async () => {
    expect(await titles({})).toEqual(['100 % sure? draft', 'Why live', 'Why now draft']);
    expect(await titles({}, 'college')).toEqual(['Theirs draft']);
    expect(await listWrittenQuestions(db, 'harbour', { search: '100' }, 50)).toMatchObject([
      { questionId: 'a', number: 1, form: 'choice', topics: ',filtration,', writer: 'ira' },
    ]);
  });

  test('is found by state, topic, form and title', async () => {
    expect(await titles({ state: 'live' })).toEqual(['Why live']);
    expect(await titles({ topic: 'fuel-quality' })).toEqual(['Why live']);
    expect(await titles({ form: 'words', state: 'draft' })).toEqual(['Why now draft']);
    expect(await titles({ search: '% s' })).toEqual(['100 % sure? draft']);
    expect(await titles({ search: '%%' })).toEqual([]);
    expect(await titles({ search: '_' })).toEqual([]);
  });

  test('is counted by state', async () => {
    expect(await countWrittenQuestions(db, 'harbour', { state: 'live' })).toEqual({ draft: 2, live: 1 });
    expect(await countWrittenQuestions(db, 'harbour', { search: 'Why' })).toEqual({ draft: 1, live: 1 });
    expect(await countWrittenQuestions(db, 'college', {})).toEqual({ draft: 1 });
  });

  test('is asked by topic once it is live', async () => {
    expect((await listLiveVersions(db, 'harbour', 'fuel-quality')).map(({ id }) => id)).toEqual(['b-1']);
    expect(await listLiveVersions(db, 'harbour', 'fuel')).toEqual([]);
    expect(await listLiveVersions(db, 'college')).toEqual([]);
  });
});
