import { expect, test } from 'vitest';
import { type Askable, type Asked, nextAsked } from '@/lib/questions/next-asked';
import { randomStream } from '@/lib/random';

function sitting(askable: Askable, length: number, seed = 'maple'): Asked[] {
  const draw = randomStream(seed, 'test');
  const asked: Asked[] = [];
  for (let place = 0; place < length; place++) {
    const next = nextAsked(askable, asked, draw);
    if (next) asked.push(next);
  }
  return asked;
}

const kindsOf = (asked: readonly Asked[]) => asked.map((one) => ('kind' in one ? one.kind : 'written'));

test('no kind comes twice in a row where there are several, and none is left behind', () => {
  for (const seed of ['oak', 'elm', 'ash']) {
    const kinds = kindsOf(sitting({ kinds: ['judge', 'read-dial', 'work-out'], written: [] }, 30, seed));
    for (const [place, kind] of kinds.entries()) expect(kind).not.toBe(kinds[place - 1]);
    for (const kind of ['judge', 'read-dial', 'work-out']) expect(kinds.filter((one) => one === kind)).toHaveLength(10);
  }
});

test('one kind alone is asked again and again', () => {
  expect(kindsOf(sitting({ kinds: ['judge'], written: [] }, 4))).toEqual(['judge', 'judge', 'judge', 'judge']);
});

test('many written questions crowd no kind out', () => {
  const written = Array.from({ length: 40 }, (_, n) => `question-${n}`);
  const kinds = kindsOf(sitting({ kinds: ['judge', 'read-dial'], written }, 30));
  expect(kinds.filter((kind) => kind === 'written')).toHaveLength(10);
});

test('a written question does not come twice while there is something else', () => {
  const asked = sitting({ kinds: ['judge', 'read-dial'], written: ['a', 'b'] }, 40);
  expect(asked.filter((one) => 'written' in one)).toHaveLength(2);
  expect(sitting({ kinds: [], written: ['a'] }, 3)).toEqual([{ written: 'a' }, { written: 'a' }, { written: 'a' }]);
});

test('where there is nothing to ask, nothing is asked', () => {
  expect(sitting({ kinds: [], written: [] }, 3)).toEqual([]);
});
