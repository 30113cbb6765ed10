import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Mark, notesOf, pointsOf, shareOf } from '@/lib/grading/mark';

const mark = (share: number, most?: number): Mark => ({
  code: 'verdict-right',
  values: { seq: 1 },
  share,
  ...(most !== undefined && { most }),
});

test('marks become points of the part’s weight, with the most that each could bring', () => {
  expect(notesOf('call', [mark(0.5, 0.6), mark(-0.1)], 30)).toEqual([
    { part: 'call', code: 'verdict-right', values: { seq: 1, outOf: 18 }, points: 15 },
    { part: 'call', code: 'verdict-right', values: { seq: 1 }, points: -3 },
  ]);
});

test('three thirds are the whole, each to a tenth', () => {
  const notes = notesOf('reasons', [mark(1 / 3), mark(1 / 3), mark(1 / 3)], 25);
  expect(notes.map(({ points }) => points)).toEqual([8.3, 8.4, 8.3]);
  expect(pointsOf(notes, 'reasons')).toBe(25);
});

test('points of another part are not counted', () => {
  expect(pointsOf(notesOf('route', [mark(1)], 10), 'call')).toBe(0);
});

test('however they are rounded, the notes’ points sum to the share of the weight, to a tenth', () => {
  const shares = fc.array(fc.double({ min: -0.3, max: 0.5, noNaN: true }), { maxLength: 40 });
  fc.assert(
    fc.property(shares, fc.integer({ min: 0, max: 100 }), (given, weight) => {
      const marks = given.map((share) => mark(share));
      const notes = notesOf('practice', marks, weight);
      // Half a tenth by rounding once; the rest is binary dust.
      expect(Math.abs(pointsOf(notes, 'practice') - shareOf(marks) * weight)).toBeLessThanOrEqual(0.05 + 1e-6);
    }),
    { endOnFailure: true },
  );
});
