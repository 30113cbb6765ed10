import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type EarnedTask, turnTotal } from '@/lib/assignments/turn-total';

const aTask = (kind: EarnedTask['kind'], share: number | null, withdrawn = false): EarnedTask => ({
  kind,
  share,
  withdrawn,
});

test('a case weighs as much as five questions', () => {
  expect(turnTotal([aTask('case', 1), aTask('question', 0)])).toEqual({ total: 83.3, waiting: 0 });
  const half = [aTask('case', 0), ...Array.from({ length: 5 }, () => aTask('question', 1))];
  expect(turnTotal(half).total).toBe(50);
});

test('what waits for a person and what was withdrawn count on neither side', () => {
  const tasks = [aTask('question', 1), aTask('question', null), aTask('question', 0, true)];
  expect(turnTotal(tasks)).toEqual({ total: 100, waiting: 1 });
  expect(turnTotal([aTask('question', null, true)])).toEqual({ total: 0, waiting: 0 });
  expect(turnTotal([])).toEqual({ total: 0, waiting: 0 });
});

test('a late turn loses its cost of each hundred points', () => {
  expect(turnTotal([aTask('case', 0.8)], 25).total).toBe(60);
  expect(turnTotal([aTask('case', 0.8)], 100).total).toBe(0);
});

test('a total lies between nothing and a hundred, and no task that goes better lowers it', () => {
  const tasks = fc.array(
    fc.record({
      kind: fc.constantFrom('case' as const, 'question' as const),
      share: fc.double({ min: 0, max: 1, noNaN: true }),
      withdrawn: fc.boolean(),
    }),
    { minLength: 1 },
  );
  fc.assert(
    fc.property(tasks, fc.double({ min: 0, max: 100, noNaN: true }), (some, cost) => {
      const { total } = turnTotal(some, cost);
      expect(total).toBeGreaterThanOrEqual(0);
      expect(total).toBeLessThanOrEqual(100);
      const better = some.map((task, index) => (index === 0 ? { ...task, share: 1 } : task));
      expect(turnTotal(better, cost).total).toBeGreaterThanOrEqual(total);
    }),
  );
});
