import { expect, test } from 'vitest';
import { type RandomStream, randomStream } from '@/lib/random';

function take(stream: RandomStream, count: number): number[] {
  return Array.from({ length: count }, () => stream.next());
}

test('the same seed and name give the same numbers', () => {
  expect(take(randomStream('alder', 'cause'), 20)).toEqual(take(randomStream('alder', 'cause'), 20));
});

test('another name or another seed gives other numbers', () => {
  const numbers = take(randomStream('alder', 'cause'), 5);
  expect(take(randomStream('alder', 'severity'), 5)).not.toEqual(numbers);
  expect(take(randomStream('beech', 'cause'), 5)).not.toEqual(numbers);
});

test('a name cannot be moved into the seed', () => {
  expect(take(randomStream('ab', 'c'), 5)).not.toEqual(take(randomStream('b', 'ca'), 5));
});

test('drawing more from one stream moves nothing in another', () => {
  const alone = take(randomStream('alder', 'setting air'), 5);
  const severities = randomStream('alder', 'severity');
  const air = randomStream('alder', 'setting air');
  const beside = Array.from({ length: 5 }, () => {
    take(severities, 3);
    return air.next();
  });
  expect(beside).toEqual(alone);
});

test('numbers lie in their range and fill it', () => {
  const stream = randomStream('alder', 'range');
  const numbers = Array.from({ length: 2000 }, () => stream.between(-2, 6));
  // Of 2,000 uniform numbers none falls in the outer hundredth of the range with a chance of 2e-9.
  expect(Math.min(...numbers)).toBeGreaterThanOrEqual(-2);
  expect(Math.min(...numbers)).toBeLessThan(-1.92);
  expect(Math.max(...numbers)).toBeLessThan(6);
  expect(Math.max(...numbers)).toBeGreaterThan(5.92);
});

test('items are picked as often as their weight says', () => {
  const stream = randomStream('alder', 'weights');
  const picks = Array.from({ length: 4000 }, () => stream.pick(['rare', 'common', 'never'], weightOf));
  const common = picks.filter((item) => item === 'common').length;
  // Binomial with n = 4000, p = 0.9: five standard deviations are 95.
  expect(Math.abs(common - 3600)).toBeLessThan(95);
  expect(picks).not.toContain('never');
});

function weightOf(item: string): number {
  return { rare: 1, common: 9 }[item] ?? 0;
}

test('nothing can be picked from an empty list', () => {
  expect(() => randomStream('alder', 'none').pick([])).toThrow(RangeError);
});
