import { expect, test } from 'vitest';
import type { Shown } from '@/lib/checks/shown';
import type { ReadingAct } from '@/lib/grading/acts';
import { instrumentsDestroyed } from '@/lib/grading/acts';
import type { CallGrade } from '@/lib/grading/grade-call';
import { gradePractice, safetyEvents } from '@/lib/grading/grade-practice';
import { aReading } from '../../support/attempt-rows';
import { catalogue } from '../../support/bench-rig';

const allRight: CallGrade = {
  share: 1,
  notes: [],
  correct: { cause: true, area: true, repair: true, proof: true },
  onTheWay: true,
  wrongRepairs: [],
};
const good = aReading({ instrument: 'dial-0-30-psi' });
const lost: Shown[] = [{ kind: 'destroyed', quantity: 'prime-pressure' }];

function graded(readings: ReadingAct[], called: Partial<CallGrade> = {}) {
  const numbered = readings.map((reading, index) => ({ ...reading, seq: index + 1 }));
  const { share, notes } = gradePractice(numbered, catalogue, { ...allRight, ...called });
  return { share, codes: notes.map(({ code }) => code) };
}

function showing(psi: number): Shown[] {
  return [{ kind: 'value', quantity: 'prime-pressure', value: psi, unit: 'psi' }];
}

test('a fitting gauge, a wise condition and no good part condemned is clean work', () => {
  expect(graded([good])).toEqual({ share: 1, codes: ['practice-clean'] });
});

test('a low-range gauge on an engine that turns is unwise', () => {
  const { share, codes } = graded([{ ...good, condition: 'cranking' }]);
  expect(codes).toEqual(['unwise-condition']);
  expect(share).toBeLessThan(1);
});

test('a destroyed instrument costs the whole part', () => {
  expect(graded([{ ...good, shown: lost }])).toEqual({ share: 0, codes: ['instrument-destroyed'] });
});

test('a pointer at its stop is a range chosen wrong', () => {
  const shown: Shown[] = [{ kind: 'off-scale', quantity: 'prime-pressure', end: 'high', limit: 30, unit: 'psi' }];
  expect(graded([{ ...good, shown }]).codes).toEqual(['off-scale']);
});

test('a needle that hardly leaves its stop is too coarse where a finer gauge fits', () => {
  expect(graded([{ ...good, instrument: 'dial-0-300-psi', shown: showing(16) }]).codes).toEqual(['too-coarse']);
});

test('a needle well up the scale is not too coarse', () => {
  expect(graded([{ ...good, instrument: 'dial-0-300-psi', shown: showing(40) }]).codes).toEqual(['practice-clean']);
});

test('a low reading on the finest gauge that fits is nobody’s fault', () => {
  expect(graded([{ ...good, shown: showing(1) }]).codes).toEqual(['practice-clean']);
});

test('a digital display is never too coarse', () => {
  const shown: Shown[] = [{ kind: 'value', quantity: 'prime-pressure', value: 110, unit: 'kPa' }];
  expect(graded([{ ...good, instrument: 'digital-0-4-mpa', shown }]).codes).toEqual(['practice-clean']);
});

test('condemning a good part costs, whatever else was done well', () => {
  const { share, codes } = graded([good], { wrongRepairs: ['replace-gear-pump'] });
  expect(codes).toEqual(['good-part-condemned']);
  expect(share).toBeLessThan(1);
});

test('leaving the fuel system alone condemns no part, even where it is wrong', () => {
  expect(graded([good], { wrongRepairs: ['look-outside-fuel-system'] }).codes).toEqual(['practice-clean']);
});

test('a call without a reading shows no practice at all', () => {
  expect(graded([])).toEqual({ share: 0, codes: ['no-readings'] });
});

test('lapses add up, and no further than to nothing', () => {
  const unwise = { ...good, condition: 'cranking', instrument: 'dial-0-300-psi', shown: showing(16) } as const;
  expect(graded([unwise]).codes).toEqual(['unwise-condition', 'too-coarse']);
  expect(graded([unwise]).share).toBeCloseTo(0.4, 12);
  expect(graded([unwise, unwise, unwise]).share).toBe(0);
});

test('every lost instrument is a safety event that names its reading, and can be used no more', () => {
  const readings = [
    { ...good, seq: 1 },
    { ...good, seq: 3, shown: lost },
  ];
  expect(safetyEvents(readings)).toEqual([{ seq: 3, code: 'instrument-destroyed' }]);
  expect(instrumentsDestroyed(readings)).toEqual(new Set(['dial-0-30-psi']));
});
