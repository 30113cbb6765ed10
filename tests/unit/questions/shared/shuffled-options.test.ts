import { expect, test } from 'vitest';
import { shuffled, shuffledOptions } from '@/lib/questions/shared/shuffled-options';
import { randomStream } from '@/lib/random';

const choices = [
  { line: { say: 'right' } },
  ...['one', 'two', 'three'].map((say) => ({ line: { say }, because: { say: `not-${say}` } })),
];

test('the right option stands in every place as often as in any other', () => {
  const places = new Map<string, number>();
  for (let seed = 0; seed < 4000; seed++) {
    const { right } = shuffledOptions(randomStream(`s${seed}`, 'shuffle'), choices);
    for (const id of right) places.set(id, (places.get(id) ?? 0) + 1);
  }
  expect([...places.keys()].sort()).toEqual(['a', 'b', 'c', 'd']);
  // 1,000 expected, standard deviation 27.
  for (const count of places.values()) expect(Math.abs(count - 1000)).toBeLessThan(120);
});

test('each wrong option keeps what speaks against it', () => {
  const { options, right, because } = shuffledOptions(randomStream('a', 'shuffle'), choices);
  for (const { id, line } of options)
    if (!right.includes(id)) expect(because[id]).toEqual({ say: `not-${'say' in line ? line.say : ''}` });
  expect(Object.keys(because)).toHaveLength(3);
});

test('shuffling loses nothing and leaves its items alone', () => {
  const items = [1, 2, 3, 4, 5, 6];
  expect([...shuffled(randomStream('a', 'shuffle'), items)].sort()).toEqual(items);
  expect(items).toEqual([1, 2, 3, 4, 5, 6]);
});
