import { expect, test } from 'vitest';
import type { SafetyEvent } from '@/lib/grading/grade';
import { totalOf } from '@/lib/grading/total';

const rubric = { bands: [25, 40, 60, 80] as [number, number, number, number], safetyCap: 39 };
const lost: SafetyEvent = { seq: 3, code: 'instrument-destroyed' };

function graded(points: number, events: readonly SafetyEvent[] = []) {
  return totalOf([{ part: 'call', points, outOf: 100 }], events, rubric);
}

test.each([
  [0, 0],
  [24, 0],
  [25, 1],
  [39, 1],
  [40, 2],
  [60, 3],
  [79, 3],
  [80, 4],
  [100, 4],
])('a total of %d scores %d of 4', (points, score) => {
  expect(graded(points)).toEqual({ total: points, capped: false, score });
});

test('a total is rounded before its band is looked up', () => {
  expect(graded(59.5)).toEqual({ total: 60, capped: false, score: 3 });
});

test('something dangerous holds the total in the first band, whatever else was earned', () => {
  expect(graded(97, [lost])).toEqual({ total: 39, capped: true, score: 1 });
  expect(graded(39, [lost])).toEqual({ total: 39, capped: false, score: 1 });
  expect(graded(10, [lost])).toEqual({ total: 10, capped: false, score: 0 });
});
