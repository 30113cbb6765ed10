import { describe, expect, test } from 'vitest';
import type { Area } from '@/lib/areas';
import { type Belief, beliefAtStart } from '@/lib/diagnosis/belief';
import type { FindingAct, ReadingAct } from '@/lib/grading/acts';
import type { FindingGrade } from '@/lib/grading/grade';
import { gradeFinding } from '@/lib/grading/grade-finding';
import { judgedFinding } from '@/lib/grading/judged-finding';
import { markingOf } from '../../support/marking';
import { aCase, judged, taken } from '../../support/worked-attempt';

const weakPump = aCase({ cause: 'lift-pump-weak' });
const marking = markingOf(weakPump);
const { particles } = marking;
const start = beliefAtStart(particles);

/** A low-range dial at the main-filter inlet, showing what the test says; the limit is 70 kPa, 10.15 psi. */
function aPrimeReading(psi: number): ReadingAct & { seq: number } {
  const read = taken(weakPump, 1, { check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' });
  return { ...read, shown: [{ kind: 'value', quantity: 'prime-pressure', value: psi, unit: 'psi' }] };
}

function graded(
  reading: ReadingAct & { seq: number },
  changes: Partial<FindingAct> = {},
  from: Belief = start,
  later: readonly (ReadingAct & { seq: number })[] = [],
): Required<FindingGrade> {
  const finding = judgedFinding(marking, judged(weakPump, 2, reading, changes), reading);
  if (!finding) throw new Error('Nothing to grade');
  return gradeFinding(finding, marking, from, [reading, ...later]).grade;
}

describe('verdict and reason', () => {
  test('a clear fail called so, with its line and side, earns all three', () => {
    expect(graded(aPrimeReading(5))).toMatchObject({
      expectedVerdict: 'fail',
      verdictRight: true,
      limit: 'prime-pressure-key-on',
      limitRight: true,
      comparisonRight: true,
      dialRight: true,
    });
  });

  test('a fail called a pass earns neither verdict nor comparison', () => {
    const grade = graded(aPrimeReading(5), { verdict: 'pass', comparison: 'within' });
    expect(grade).toMatchObject({ verdictRight: false, comparisonRight: false, limitRight: true });
  });

  test('a reading too close for its instrument cannot tell, and a bold verdict on it is wrong', () => {
    expect(graded(aPrimeReading(10.25))).toMatchObject({ expectedVerdict: 'cannot-tell', verdictRight: true });
    expect(graded(aPrimeReading(10.25), { verdict: 'pass', comparison: 'within' }).verdictRight).toBe(false);
  });

  test('the right comparison under a verdict that contradicts it earns nothing', () => {
    const grade = graded(aPrimeReading(5), { verdict: 'pass', comparison: 'below' });
    expect(grade).toMatchObject({ verdictRight: false, comparisonRight: false });
  });

  test('the wrong line of the sheet is wrong, and so is none where there is one', () => {
    expect(graded(aPrimeReading(5), { limit: 'gear-pump-pressure-idle' }).limitRight).toBe(false);
    expect(graded(aPrimeReading(5), { limit: null }).limitRight).toBe(false);
  });

  test('what the sheet has no line for cannot be told, and saying that no line applies is right', () => {
    const read = taken(weakPump, 1, { check: 'rail-pressure', condition: 'key-off', instrument: 'data-display' });
    const grade = graded(read, { quantity: 'commanded-rail-pressure' });
    expect(grade).toMatchObject({ limit: null, limitRight: true, expectedVerdict: 'cannot-tell', verdictRight: true });
  });
});

describe('cannot tell', () => {
  const close = aPrimeReading(10.25);
  const prime = { check: 'prime-pressure', condition: 'key-on' } as const;
  const finer = taken(weakPump, 3, { ...prime, instrument: 'dial-0-200-kpa' });

  test('earns seven tenths of the verdict at once, where something could have settled it', () => {
    expect(graded(close)).toMatchObject({ settledLater: false, dialShare: 1 });
    expect(graded(close).verdictShare).toBeCloseTo(0.8 * 0.7 + 0.2, 12);
  });

  test('earns the whole once a finer instrument settled it, and not when the same was read again', () => {
    expect(graded(close, {}, start, [finer])).toMatchObject({
      settledLater: true,
      verdictShare: 1,
    });
    expect(graded(close, {}, start, [{ ...close, seq: 3 }]).settledLater).toBe(false);
  });

  test('is not settled by what was read before, nor by a reading as close', () => {
    // Its class error is a share of four megapascals, and reaches over the limit.
    const coarse = taken(weakPump, 3, { ...prime, instrument: 'digital-0-4-mpa' });
    expect(graded(close, {}, start, [coarse]).settledLater).toBe(false);
    expect(graded({ ...close, seq: 5 }, {}, start, [finer]).settledLater).toBe(false);
  });

  test('earns the whole at once where nothing that there is could have settled it', () => {
    const read = taken(weakPump, 1, { check: 'rail-pressure', condition: 'key-off', instrument: 'data-display' });
    const grade = graded(read, { quantity: 'commanded-rail-pressure' });
    expect(grade).toMatchObject({ expectedVerdict: 'cannot-tell', settledLater: null, verdictShare: 1 });
  });

  test('said of a clear reading is wrong', () => {
    const grade = graded(aPrimeReading(5), { verdict: 'cannot-tell', comparison: 'too-close' });
    expect(grade).toMatchObject({ verdictRight: false, settledLater: null });
    expect(grade.verdictShare).toBeCloseTo(0.2, 12);
  });
});

describe('reading the dial', () => {
  // The smallest division of the dial is 0.5 psi.
  test.each([
    [5.25, 1],
    [4.75, 1],
    [5.5, 0.5],
    [5.6, 0],
    [4.4, 0],
  ])('%d psi where the needle stands at 5 earns %d of the dial', (value, share) => {
    const grade = graded(aPrimeReading(5), { entered: { value, unit: 'psi' } });
    expect(grade).toMatchObject({ dialShare: share, dialRight: share === 1 });
    expect(grade.verdictShare).toBeCloseTo(0.8 + 0.2 * share, 12);
  });

  test('another unit of pressure is as good', () => {
    expect(graded(aPrimeReading(5), { entered: { value: 34.5, unit: 'kPa' } }).dialShare).toBe(1);
  });

  test('a misread dial, judged as it was read, keeps verdict, comparison and what follows', () => {
    const misread = {
      entered: { value: 15, unit: 'psi' },
      verdict: 'pass',
      comparison: 'within',
      clears: ['priming'],
    } as const;
    const grade = graded(aPrimeReading(5), misread);
    expect(grade).toMatchObject({ expectedVerdict: 'fail', dialShare: 0, verdictRight: true, comparisonRight: true });
    expect(grade.verdictShare).toBeCloseTo(0.8, 12);
    expect(grade.clears[0]).toMatchObject({ area: 'priming', right: true });
    // What the needle said is what is told as before and after.
    expect(grade.clears[0]?.after).toBeGreaterThan(grade.clears[0]?.before ?? 1);
  });

  test('a misread dial does not excuse a verdict that fits neither', () => {
    const misread = { entered: { value: 15, unit: 'psi' }, verdict: 'cannot-tell', comparison: 'too-close' } as const;
    expect(graded(aPrimeReading(5), misread)).toMatchObject({ verdictRight: false, comparisonRight: false });
  });

  test('where the instrument prints its value there is no dial to read', () => {
    const read = taken(weakPump, 1, { check: 'rail-pressure', condition: 'key-off', instrument: 'data-display' });
    expect(graded(read)).toMatchObject({ dialRight: null, dialShare: null });
  });
});

describe('what a reading clears and suspects', () => {
  const cleared = (area: Area) => graded(aPrimeReading(5), { clears: [area] }).clears[0]?.right;
  const suspected = (area: Area) => graded(aPrimeReading(5), { suspects: [area] }).suspects[0]?.right;

  test('a low prime pressure leaves the lift pump suspect and cannot clear it', () => {
    expect(suspected('priming')).toBe(true);
    expect(cleared('priming')).toBe(false);
  });

  test('a low prime pressure does not throw suspicion on the rail', () => {
    expect(suspected('high-pressure')).toBe(false);
  });

  test('a good prime pressure clears the lift pump', () => {
    const grade = graded(aPrimeReading(17), { clears: ['priming'], suspects: ['priming'] });
    expect(grade.clears).toMatchObject([{ area: 'priming', right: true }]);
    expect(grade.suspects).toMatchObject([{ area: 'priming', right: false }]);
  });

  test('an area that nothing speaks for any more is cleared, whether or not this reading did it', () => {
    const weak = particles.causes.map((causes) => Number(causes.every(({ id }) => id === 'lift-pump-weak')));
    const total = weak.reduce((sum, weight) => sum + weight, 0);
    const settled = Float64Array.from(weak, (weight) => weight / total);
    const grade = graded(aPrimeReading(5), { clears: ['returns'] }, settled);
    expect(grade.clears).toMatchObject([{ area: 'returns', right: true }]);
  });

  test('two sound readings of the same needle clear and suspect the same', () => {
    for (const psi of [5, 5.25]) {
      const grade = graded(aPrimeReading(5), { entered: { value: psi, unit: 'psi' }, suspects: ['priming'] });
      expect(grade.reasonShare).toBe(graded(aPrimeReading(5), { suspects: ['priming'] }).reasonShare);
    }
  });

  test('what leads and was not named is told, and costs', () => {
    const silent = graded(aPrimeReading(5));
    expect(silent.missed).toContain('priming');
    expect(silent.reasonShare).toBeCloseTo(2 / 3, 12);
    expect(graded(aPrimeReading(5), { suspects: ['priming'] }).missed).not.toContain('priming');
  });
});

describe('a finding that judges nothing measured', () => {
  const reading = aPrimeReading(5);
  const finding = judged(weakPump, 2, reading);

  test.each<[string, FindingAct & { seq: number }, ReadingAct | undefined]>([
    ['no such reading', finding, undefined],
    ['a check that content does not have', finding, { ...reading, check: 'compression' }],
    ['an instrument that content does not have', finding, { ...reading, instrument: 'stethoscope' }],
    ['a quantity that the check does not have', { ...finding, quantity: 'noise' }, reading],
    ['a destroyed instrument', finding, { ...reading, shown: [{ kind: 'destroyed', quantity: 'prime-pressure' }] }],
  ])('is left out: %s', (_why, act, read) => {
    expect(judgedFinding(marking, act, read && { ...read, seq: 1 })).toBeUndefined();
  });
});
