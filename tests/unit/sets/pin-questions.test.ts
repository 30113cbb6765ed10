import { expect, test } from 'vitest';
import { pinQuestions } from '@/lib/sets/pin-questions';
import { setBodySchema } from '@/lib/sets/set-body';
import { aSetBody } from '../../support/teaching-rows';

const body = aSetBody({
  items: [
    { id: 'a', kind: 'written', questionId: 'hoses', versionId: 'hoses-1' },
    { id: 'b', kind: 'questions', count: 2, topic: 'filtration' },
  ],
});

test('a set is assigned with the versions that are live then, whichever were before', () => {
  const pinned = pinQuestions(body, new Map([['hoses', 'hoses-3']]));
  expect(pinned?.items).toEqual([{ ...body.items[0], versionId: 'hoses-3' }, body.items[1]]);
  expect(setBodySchema.safeParse(pinned).success).toBe(true);
});

test('a set whose question is not in use any more cannot be assigned', () => {
  expect(pinQuestions(body, new Map([['others', 'others-1']]))).toBeUndefined();
});
