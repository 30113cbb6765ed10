import { expect, test } from 'vitest';
import type { ReadingAct } from '@/lib/grading/acts';
import type { CallGrade } from '@/lib/grading/grade-call';
import { gradeRoute } from '@/lib/grading/grade-route';
import { aReading } from '../../support/attempt-rows';
import { catalogue } from '../../support/bench-rig';

const expert = [
  { check: 'prime-pressure', condition: 'key-on', minutes: 12 },
  { check: 'screen-drop', condition: 'full-load', minutes: 20 },
] as const;

function graded(checks: readonly string[], area = true) {
  const readings: ReadingAct[] = checks.map((check) => aReading({ check }));
  const correct: CallGrade['correct'] = { cause: area, area, repair: area, proof: area };
  const call: CallGrade = { share: 1, notes: [], correct, onTheWay: area, wrongRepairs: [] };
  const { share, minutes, notes } = gradeRoute(readings, catalogue, expert, call);
  return { share, minutes, code: notes[0]?.code };
}

test('the expert’s own checks earn everything', () => {
  expect(graded(['prime-pressure', 'screen-drop'])).toEqual({ share: 1, minutes: 32, code: 'route-short' });
});

test('a shorter route is not worth more than all', () => {
  expect(graded(['screen-drop']).share).toBe(1);
});

test('a route is short up to 1.25 times the expert’s minutes', () => {
  // 32 of 40 minutes is exactly 0.8.
  expect(graded(['screen-drop', 'screen-drop'])).toEqual({ share: 1, minutes: 40, code: 'route-short' });
});

test('twice the expert’s minutes earn five eighths', () => {
  const grade = graded(['screen-drop', 'screen-drop', 'prime-pressure', 'prime-pressure']);
  expect(grade).toEqual({ share: 0.5 / 0.8, minutes: 64, code: 'route-long' });
});

test('a fast route to the wrong area earns nothing', () => {
  expect(graded(['prime-pressure'], false)).toEqual({ share: 0, minutes: 12, code: 'led-astray' });
});

test('a call without a reading earns nothing', () => {
  expect(graded([])).toEqual({ share: 0, minutes: 0, code: 'no-readings' });
});
