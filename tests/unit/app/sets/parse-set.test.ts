import { describe, expect, test } from 'vitest';
import { itemIn, parseSet, usableItems } from '@/app/_server/sets/parse-set';
import { type DraftItem, draftOf, emptyDraft, freeItemId, newItem } from '@/app/sets/editor/draft';
import type { SetBody } from '@/lib/sets/set-body';
import { catalogue } from '../../../support/bench-rig';

const cases = (changes: object = {}) => ({ ...newItem('cases', 'a'), ...changes }) as DraftItem;
const item = (draft: object) => itemIn(JSON.stringify(draft));

describe('what the editor makes of a set comes back as the same set', () => {
  const everything: SetBody = {
    title: 'All there is',
    note: 'Read this',
    blueprint: 'first-week',
    items: [
      { id: 'a', kind: 'case', code: 'SAD-MPW3-CW' },
      {
        id: 'b',
        kind: 'cases',
        count: 3,
        wishes: {
          topics: ['filtration'],
          rigs: ['tern-13'],
          difficulty: [-0.5, 2],
          hardest: true,
          faults: 'double',
          minutes: 45,
        },
      },
      { id: 'c', kind: 'cases', count: 1, wishes: {} },
      { id: 'd', kind: 'written', questionId: 'abc' },
      { id: 'e', kind: 'questions', count: 2, topic: 'filtration' },
    ],
  };

  test.each<[string, SetBody]>([
    ['with everything', everything],
    ...[...catalogue.readySets.values()].map(({ id, body }): [string, SetBody] => [id, body]),
  ])('%s', async (_name, body) => {
    expect(await parseSet(JSON.stringify(draftOf(body)))).toEqual({ body });
  });
});

describe('an item as it is typed', () => {
  test('with one end of a band leaves the other open', () => {
    expect(item(cases({ from: '1.5' }))).toMatchObject({ wishes: { difficulty: [1.5, 6] } });
    expect(item(cases({ to: '0' }))).toMatchObject({ wishes: { difficulty: [-6, 0] } });
  });

  test.each<[string, object]>([
    ['no number of cases', cases({ count: 'two' })],
    ['more than there may be', cases({ count: '21' })],
    ['part of a case', cases({ count: '1.5' })],
    ['a difficulty that is no number', cases({ from: 'easy' })],
    ['no time at all', cases({ minutes: '0' })],
    ['no question', newItem('written', 'a')],
    ['no code', newItem('case', 'a')],
    ['no topic', newItem('questions', 'a')],
    ['what no editor sends', { ...newItem('case', 'a'), code: 'ABC', extra: 1 }],
  ])('with %s is not drawn', (_what, draft) => {
    expect(item(draft)).toBeUndefined();
  });

  test('that is wrong leaves the others of its set usable', () => {
    const items = [cases({ count: 'two' }), { ...cases(), id: 'b' }];
    expect(usableItems(JSON.stringify({ ...emptyDraft(), items }))?.items).toMatchObject([{ id: 'b' }]);
  });
});

test('what is no set at all is told apart from a set that cannot be kept', async () => {
  expect(await parseSet('{')).toBeUndefined();
  expect(await parseSet(undefined)).toBeUndefined();
  expect(await parseSet(JSON.stringify({ ...emptyDraft(), items: [{ id: 'a', kind: 'essay' }] }))).toBeUndefined();
});

test('a new item has an id that no other has', () => {
  expect(freeItemId([{ id: 'i3' }, { id: 'i2' }])).toBe('i4');
  expect(freeItemId([])).toBe('i1');
});
