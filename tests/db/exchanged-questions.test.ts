import { eq } from 'drizzle-orm';
import { beforeEach, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { countExchanged, listExchanged } from '@/db/queries/exchanged-questions';
import { addingDraft, addingWrittenQuestion } from '@/db/queries/written-questions';
import { writtenVersions } from '@/db/schema';
import type { VersionState } from '@/db/schema/written-questions';
import { together } from '@/db/together';
import { makeShopAndCollege, noon } from '../support/shop-rows';
import { testDatabase } from '../support/test-database';
import { aWrittenQuestion } from '../support/written-questions';

let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await makeShopAndCollege(db);
});

/** A question with versions in these states, the first of them the oldest; each names its number. */
async function add(
  id: string,
  states: readonly VersionState[],
  { organizationId = 'harbour', topics = ['filtration'] } = {},
) {
  await together(db, [addingWrittenQuestion(db, { id, organizationId, createdBy: 'ira', createdAt: noon })]);
  for (const [index, state] of states.entries()) {
    const number = index + 1;
    const body = aWrittenQuestion(number % 2 === 1 ? 'choice' : 'words', { title: `${id} ${number}`, topics });
    const draft = { id: `${id}-${number}`, questionId: id, number, body, writtenBy: 'ira', at: noon };
    await together(db, [
      addingDraft(db, draft),
      db.update(writtenVersions).set({ state }).where(eq(writtenVersions.id, draft.id)),
    ]);
  }
}

const titles = async (...asked: Parameters<typeof listExchanged> extends [Db, ...infer Rest] ? Rest : never) =>
  (await listExchanged(db, ...asked)).map(({ question }) => question.title);

test('what is live goes out as it is live, whatever is written since', async () => {
  await add('b', ['live', 'draft']);
  await add('a', ['draft']);
  await add('c', ['retired', 'live']);
  await add('d', ['live'], { organizationId: 'college' });
  expect(await titles('harbour', { which: 'live' }, 9)).toEqual(['b 1', 'c 2']);
  expect(await titles('college', { which: 'live' }, 9)).toEqual(['d 1']);
});

test('the newest versions go out where they are asked for, but no retired ones', async () => {
  await add('a', ['live', 'in-review']);
  await add('b', ['live', 'retired']);
  await add('c', ['draft']);
  expect(await titles('harbour', { which: 'newest' }, 9)).toEqual(['a 2', 'c 1']);
});

test('a topic narrows it down, and names no other that begins alike', async () => {
  await add('a', ['live'], { topics: ['fuel-quality'] });
  await add('b', ['live'], { topics: ['filtration', 'fuel-quality'] });
  await add('c', ['live'], { topics: ['filtration'] });
  expect(await titles('harbour', { which: 'live', topic: 'fuel-quality' }, 9)).toEqual(['a 1', 'b 1']);
  expect(await titles('harbour', { which: 'live', topic: 'fuel' }, 9)).toEqual([]);
});

test('they come by their ids, some at a time, each once', async () => {
  for (const id of ['c', 'a', 'd', 'b']) await add(id, ['live']);
  expect(await titles('harbour', { which: 'live' }, 3)).toEqual(['a 1', 'b 1', 'c 1']);
  expect(await titles('harbour', { which: 'live', after: 'c' }, 3)).toEqual(['d 1']);
});

test('they are counted by form', async () => {
  await add('a', ['live']);
  await add('b', ['live']);
  await add('c', ['retired', 'live']);
  const counts = await countExchanged(db, 'harbour', { which: 'live' });
  expect(new Map(counts.map(({ form, count }) => [form, count]))).toEqual(
    new Map([
      ['choice', 2],
      ['words', 1],
    ]),
  );
});
