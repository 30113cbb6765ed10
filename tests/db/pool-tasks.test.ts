import { beforeEach, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import {
  addingPoolTask,
  countingExposure,
  countPool,
  findPoolTasks,
  listPool,
  type NewPoolTask,
} from '@/db/queries/pool-tasks';
import { together } from '@/db/together';
import { testDatabase } from '../support/test-database';

const now = { case: { contentHash: 'a', generatorVersion: 2 }, question: { contentHash: 'q', generatorVersion: 5 } };
let db: Db;

beforeEach(() => {
  db = testDatabase();
});

test('only tasks of the use that were worked out under the present content and version are drawn', async () => {
  await add(
    aTask('one', {}),
    aTask('two', { kind: 'question', ...now.question }),
    aTask('practice', { use: 'practice' }),
    aTask('old content', { contentHash: 'b' }),
    aTask('old generator', { generatorVersion: 1 }),
    aTask('versions of the other kind', { kind: 'question' }),
  );
  expect((await listPool(db, 'assessed', now)).map(({ id }) => id)).toEqual(['one', 'two']);
  expect(await countPool(db, 'assessed', now)).toEqual({ case: 1, question: 1 });
  expect(await countPool(db, 'practice', now)).toEqual({ case: 1, question: 0 });
});

test('each time that a task is given counts once', async () => {
  await add(aTask('one', {}), aTask('two', {}));
  await together(db, [countingExposure(db, 'one'), countingExposure(db, 'one')]);
  const given = await findPoolTasks(db, ['one', 'two']);
  expect(new Map(given.map(({ id, exposures }) => [id, exposures]))).toEqual(
    new Map([
      ['one', 2],
      ['two', 0],
    ]),
  );
});

async function add(...tasks: NewPoolTask[]): Promise<void> {
  await together(
    db,
    tasks.map((task) => addingPoolTask(db, task)),
  );
}

function aTask(id: string, changes: Partial<NewPoolTask>): NewPoolTask {
  return {
    ...{
      id,
      use: 'assessed',
      kind: 'case',
      caseCode: 'T4K-Q72M-9X',
      spec: null,
      topics: [],
      difficulty: 0,
      features: {},
    },
    ...{ seconds: 60, addedAt: new Date(0), ...now.case, ...changes },
  };
}
