import { expect, test } from 'vitest';
import { agreementOf } from '@/lib/reviewing/agreement';

const both = (first: number, second: number, steps = 4) => ({ first, second, steps });

test('who always gives the same agrees wholly', () => {
  const marks = [both(0, 0), both(2, 2), both(4, 4)];
  expect(agreementOf(marks)).toMatchObject({ answers: 3, same: 3, kappa: 1, standardError: 0 });
});

test('marks are compared as shares of what a question has', () => {
  const marks = [both(0, 1), both(2, 1), both(4, 3), both(2, 3)];
  const twice = marks.map(({ first, second }) => both(2 * first, 2 * second, 8));
  const [one, mixed] = [agreementOf(marks), agreementOf([...marks.slice(0, 2), ...twice.slice(2)])];
  // Means 2 and 2, variances 2 and 1: 1 − 1 / (2 + 1).
  expect(one.kappa).toBeCloseTo(2 / 3, 12);
  expect(mixed.kappa).toBeCloseTo(2 / 3, 12);
  expect(one.same).toBe(0);
});

test('too few answers, and marks that are all alike, say nothing', () => {
  expect(agreementOf([])).toMatchObject({ answers: 0, kappa: undefined });
  expect(agreementOf([both(2, 2)])).toMatchObject({ answers: 1, same: 1, kappa: undefined });
  expect(agreementOf([both(2, 1), both(2, 3)]).kappa).toBeUndefined();
});
