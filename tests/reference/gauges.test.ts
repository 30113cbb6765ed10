import { expect, test } from 'vitest';
import { accuracyLimit } from '@/lib/gauges/uncertainty';
import { catalogue } from '../support/bench-rig';
import { aGauge } from '../support/gauge';

// EN 837-1: the error limit is a percentage of span anywhere on the scale. Class 1.6 on 0–10 bar is ± 0.16 bar (seen on
// gauge vendors' pages). Exact.
test.each([0, 2.4, 5, 9.9])('a class 1.6 gauge 0–10 bar may be 0.16 bar out at %d bar', (reading) => {
  const gauge = aGauge({ unit: 'bar', range: { min: 0, max: 10 }, accuracy: { kind: 'class', percentOfSpan: 1.6 } });
  expect(accuracyLimit(gauge, reading)).toBeCloseTo(0.16, 12);
});

/** EN 837-1 (from memory). */
const EN_CLASSES = [0.1, 0.25, 0.6, 1, 1.6, 2.5, 4];

/** ASME B40.100: percent of span in lower quarter, middle half, upper quarter (A seen in part; the rest from memory). */
const ASME_GRADES: Readonly<Record<string, readonly [number, number, number]>> = {
  '4A': [0.1, 0.1, 0.1],
  '3A': [0.25, 0.25, 0.25],
  '2A': [0.5, 0.5, 0.5],
  '1A': [1, 1, 1],
  A: [2, 1, 2],
  B: [3, 2, 3],
  C: [4, 3, 4],
  D: [5, 5, 5],
};

const pressureGauges = [...catalogue.gauges.values()].filter(({ accuracy }) => accuracy.kind !== 'absolute');

test('there are gauges of both standards', () => {
  expect(new Set(pressureGauges.map(({ accuracy }) => accuracy.kind))).toEqual(new Set(['class', 'quarters']));
});

test.each(pressureGauges)('$id has a class or grade that its standard knows, and says which', ({ accuracy, text }) => {
  if (accuracy.kind === 'class') {
    expect(EN_CLASSES).toContain(accuracy.percentOfSpan);
    expect(text.en.accuracy).toBe(`class ${accuracy.percentOfSpan}`);
  } else if (accuracy.kind === 'quarters') {
    const grade = Object.entries(ASME_GRADES).find(([, percents]) => `${percents}` === `${accuracy.percentOfSpan}`);
    expect(text.en.accuracy).toBe(`grade ${grade?.[0]}`);
  }
});

test.each(Object.entries(ASME_GRADES))(
  'grade %s allows its percentages by quarter of the scale',
  (_grade, percents) => {
    const [lower, middle, upper] = percents;
    const gauge = aGauge({ accuracy: { kind: 'quarters', percentOfSpan: [lower, middle, upper] } });
    expect([12, 50, 88].map((reading) => accuracyLimit(gauge, reading))).toEqual([lower, middle, upper]);
  },
);
