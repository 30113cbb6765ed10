import { expect, test } from 'vitest';
import type { Shown } from '@/lib/checks/shown';
import { instrumentsDestroyed, type ReadingAct } from '@/lib/grading/acts';
import type { StepGrade } from '@/lib/grading/grade';
import { gradePractice } from '@/lib/grading/grade-practice';
import { shareOf } from '@/lib/grading/mark';
import { safetyEvents } from '@/lib/grading/safety-events';
import { aReading } from '../../support/attempt-rows';
import { aRig, catalogue } from '../../support/bench-rig';
import { standardRubric } from '../../support/marking';

const good = aReading({ instrument: 'dial-0-30-psi' });
const lost: Shown[] = [{ kind: 'destroyed', quantity: 'prime-pressure' }];

type Changes = Partial<Parameters<typeof gradePractice>[0]> & { wrongRepairs?: readonly string[] };

/** Practice of these readings; codes without the one that practice begins with. */
function graded(readings: ReadingAct[], { wrongRepairs = [], ...changes }: Changes = {}) {
  const numbered = readings.map((reading, index) => ({ ...reading, seq: index + 1 }));
  const events = safetyEvents(numbered, { rig: aRig() }, catalogue);
  const work = { readings: numbered, steps: [], events, restoring: [], ...changes };
  const marks = gradePractice(
    work,
    { wrongRepairs },
    { theCase: { rig: aRig() }, catalogue, rubric: standardRubric() },
  );
  return { share: shareOf(marks), codes: marks.map(({ code }) => code).filter((code) => code !== 'practice-begun') };
}

function showing(psi: number): Shown[] {
  return [{ kind: 'value', quantity: 'prime-pressure', value: psi, unit: 'psi' }];
}

test('a fitting gauge, a wise condition and no good part condemned is clean work', () => {
  expect(graded([good])).toEqual({ share: 1, codes: ['practice-clean'] });
});

test('a condition that the procedure does not call for is unwise', () => {
  const { share, codes } = graded([
    { ...good, condition: 'cranking', instrument: 'dial-0-300-psi', shown: showing(40) },
  ]);
  expect(codes).toEqual(['unwise-condition']);
  expect(share).toBeCloseTo(0.6, 12);
});

test('a destroyed instrument costs the whole part', () => {
  expect(graded([{ ...good, shown: lost }])).toEqual({ share: 0, codes: ['instrument-destroyed'] });
  expect(graded([{ ...good, check: 'gear-pump-pressure', condition: 'cranking' }])).toEqual({
    share: 0,
    codes: ['cranked-low-range'],
  });
});

test('a pointer at its stop is a range chosen wrong', () => {
  const shown: Shown[] = [{ kind: 'off-scale', quantity: 'prime-pressure', end: 'high', limit: 30, unit: 'psi' }];
  expect(graded([{ ...good, shown }]).codes).toEqual(['off-scale']);
});

test('several pointers at their stops in one hook-up are one wrong choice', () => {
  const shown = ['injector-1', 'injector-2'].map(
    (quantity): Shown => ({ kind: 'off-scale', quantity, end: 'high', limit: 50, unit: 'mL/min' }),
  );
  const reading = aReading({ check: 'injector-balance', condition: 'cranking', instrument: 'cylinder-50-ml', shown });
  expect(graded([reading]).codes).toEqual(['off-scale']);
});

test('what no instrument that fits would have shown is nobody’s fault', () => {
  const shown: Shown[] = [{ kind: 'off-scale', quantity: 'seconds-to-enable', end: 'high', limit: 10, unit: 's' }];
  expect(
    graded([aReading({ check: 'crank-trace', condition: 'cranking', instrument: 'trace-recorder', shown })]).codes,
  ).toEqual(['practice-clean']);
});

test('a needle that hardly leaves its stop is too coarse where a finer gauge fits', () => {
  expect(graded([{ ...good, instrument: 'dial-0-300-psi', shown: showing(16) }]).codes).toEqual(['too-coarse']);
});

test('a gauge that could burst is no finer choice', () => {
  const cranked = { ...good, check: 'gear-pump-pressure', condition: 'cranking' } as const;
  expect(graded([{ ...cranked, instrument: 'dial-0-300-psi', shown: showing(16) }]).codes).toEqual(['practice-clean']);
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
  const shown: Shown[] = [{ kind: 'off-scale', quantity: 'prime-pressure', end: 'high', limit: 300, unit: 'psi' }];
  const unwise = { ...good, condition: 'cranking', instrument: 'dial-0-300-psi', shown } as const;
  expect(graded([unwise]).codes).toEqual(['unwise-condition', 'off-scale']);
  expect(graded([unwise]).share).toBeCloseTo(0.4, 12);
  expect(graded([unwise, unwise, unwise]).share).toBe(0);
});

test('a lost instrument can be used no more', () => {
  expect(instrumentsDestroyed([good, { ...good, shown: lost }])).toEqual(new Set(['dial-0-30-psi']));
});

test('a long check before a short one that tells as much costs, and names the short one', () => {
  const sooner = { check: 'rail-pressure', condition: 'idle', instrument: 'data-display', minutes: 6 } as const;
  const grade = { seq: 1, minutes: 20 } as StepGrade;
  const { share, codes } = graded([good], {
    steps: [
      { grade, sooner },
      { grade, sooner: undefined },
    ],
  });
  expect({ share, codes }).toEqual({ share: 0.9, codes: ['long-before-short'] });
});

test('what was left undone counts among the lapses', () => {
  const restoring = [{ code: 'left-undone', values: { step: 'prime' }, share: -0.1 }] as const;
  expect(graded([good], { restoring })).toEqual({ share: 0.9, codes: ['left-undone'] });
});
