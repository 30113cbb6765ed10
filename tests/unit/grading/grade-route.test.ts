import { expect, test } from 'vitest';
import { areas } from '@/lib/areas';
import type { AreaShares } from '@/lib/grading/grade';
import type { CallGrade } from '@/lib/grading/grade-call';
import { gradeRoute, minutesOf } from '@/lib/grading/grade-route';
import type { JudgedStep } from '@/lib/grading/judge-steps';
import { shareOf } from '@/lib/grading/mark';
import { catalogue, causeOf } from '../../support/bench-rig';
import { standardRubric } from '../../support/marking';

const nowhere = Object.fromEntries(areas.map((area) => [area, 0])) as AreaShares;
const best = {
  check: 'rail-pressure',
  condition: 'idle',
  instrument: 'data-display',
  minutes: 6,
  perMinute: 0.1,
} as const;

function aStep(minutes: number, credit: number, code: JudgedStep['code'] = 'step-less-telling'): JudgedStep {
  const hookUp = { check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' } as const;
  const grade = { ...hookUp, seq: minutes, minutes, gain: 0.1, perMinute: 0.01, best, credit, areas: nowhere };
  return { code, grade, sooner: undefined };
}

function graded(steps: JudgedStep[], called: Partial<CallGrade> = {}, expertMinutes = 20) {
  const correct: CallGrade['correct'] = { cause: true, area: true, repair: true, proof: true };
  const call: CallGrade = { marks: [], correct, onTheWay: true, wrongRepairs: [], ...called };
  const marks = gradeRoute(steps, catalogue, expertMinutes, call, standardRubric().route);
  return {
    share: shareOf(marks),
    minutes: minutesOf(steps),
    codes: marks.map(({ code }) => code),
    values: marks[0]?.values,
  };
}

test('minutes that all told what could be told earn everything, however many they are', () => {
  const grade = graded([aStep(30, 1), aStep(30, 1)]);
  expect(grade).toMatchObject({ share: 1, minutes: 60, codes: ['route-whole'] });
});

test('minutes half well spent earn five eighths: all from four fifths on', () => {
  expect(graded([aStep(30, 0.5), aStep(30, 0.5)]).share).toBeCloseTo(0.5 / 0.8, 12);
  expect(graded([aStep(40, 1), aStep(10, 0)]).share).toBe(1);
});

test('as many minutes as the expert needed are held against nobody', () => {
  expect(graded([aStep(20, 0)])).toMatchObject({ share: 1, codes: ['route-whole', 'step-less-telling'] });
  expect(graded([aStep(10, 0)]).share).toBe(1);
  expect(graded([aStep(100, 0)]).share).toBeCloseTo(0.2 / 0.8, 12);
});

test('a reading that does not count in full says why, and what would have told more', () => {
  const [, note] = gradeRoute(
    [aStep(12, 0.52)],
    catalogue,
    12,
    { marks: [], correct: { cause: true, area: true, repair: true, proof: true }, onTheWay: true, wrongRepairs: [] },
    standardRubric().route,
  );
  expect(note).toEqual({
    code: 'step-less-telling',
    values: { seq: 12, minutes: 12, percent: 52, check: 'rail-pressure', condition: 'idle' },
    share: 0,
  });
});

test('minutes of a repair that mends nothing are spent as well', () => {
  const [repair] = causeOf('gear-pump-worn').repairs;
  const minutes = repair?.minutes ?? 0;
  expect(minutes).toBeGreaterThan(0);
  const grade = graded([aStep(60, 1)], { wrongRepairs: [repair?.id ?? ''] });
  expect(grade.share).toBeCloseTo(Math.min(1, 60 / (60 + minutes) / 0.8), 12);
  expect(grade.values).toMatchObject({ minutes: 60, repairMinutes: minutes, expertMinutes: 20, wellSpent: 60 });
  expect(grade.minutes).toBe(60);
});

test('a fast route to the wrong area earns nothing', () => {
  expect(graded([aStep(6, 1)], { onTheWay: false })).toMatchObject({ share: 0, codes: ['led-astray'] });
});

test('a call without a reading earns nothing', () => {
  expect(graded([])).toMatchObject({ share: 0, minutes: 0, codes: ['no-readings'] });
});
