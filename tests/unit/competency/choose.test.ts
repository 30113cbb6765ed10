import { describe, expect, test } from 'vitest';
import { bestOf } from '@/lib/competency/choose';
import { information } from '@/lib/competency/task-model';
import { randomStream } from '@/lib/random';
import { choice } from '../../support/task-models';

const numbers = [3, 9, 1, 7, 0, 8, -2, 6, 5, Number.NaN];
const itself = (one: number) => one;

describe('the best', () => {
  test('are five, the worthiest first, and none that is worth nothing', () => {
    expect(bestOf(numbers, itself).map(({ worth }) => worth)).toEqual([9, 8, 7, 6, 5]);
    expect(bestOf([0, -1, 2, Number.NaN], itself)).toEqual([{ candidate: 2, worth: 2 }]);
  });

  test('of equals are those that come first', () => {
    const equals = ['a', 'b', 'c', 'd', 'e', 'f', 'g'];
    expect(bestOf(equals, () => 1).map(({ candidate }) => candidate)).toEqual(['a', 'b', 'c', 'd', 'e']);
  });
});

describe('the choice', () => {
  test('falls on each of the five as often, and on no other', () => {
    const random = randomStream('choice', 'test');
    const times = new Map<number, number>();
    for (let draw = 0; draw < 5000; draw++) {
      const chosen = random.pick(bestOf(numbers, itself)).candidate;
      times.set(chosen, (times.get(chosen) ?? 0) + 1);
    }
    expect([...times.keys()].sort()).toEqual([5, 6, 7, 8, 9]);
    // Binomial, 5,000 draws of 1/5: four standard deviations are 113.
    for (const count of times.values()) expect(Math.abs(count - 1000)).toBeLessThan(113);
  });

  test('can be replayed from its seed', () => {
    const chosen = (seed: string) =>
      Array.from({ length: 8 }, (_, at) => randomStream(seed, `${at}`).pick(bestOf(numbers, itself)));
    expect(chosen('one')).toEqual(chosen('one'));
    expect(chosen('one')).not.toEqual(chosen('other'));
  });

  test('is none where nothing is worth anything', () => {
    expect(bestOf([], itself)).toEqual([]);
    expect(bestOf([0, -1], itself)).toEqual([]);
  });
});

describe('what a task is worth', () => {
  test('with the third of four items used, the second is the best at ability 0', () => {
    // Reference page, section 2.2 (run): information .1369 .3486 .5148 .1779.
    const items = [choice(-1, { slope: 0.8 }), choice(-0.3, { slope: 1.2 }), choice(0.4, { slope: 1.5 }), choice(1.2)];
    const at = (places: readonly number[]) =>
      bestOf(places, (place) => information(items[place] ?? choice(9), 0)).map(({ candidate }) => candidate + 1);
    expect(at([0, 1, 2, 3])).toEqual([3, 2, 4, 1]);
    expect(at([0, 1, 3])[0]).toBe(2);
  });
});
