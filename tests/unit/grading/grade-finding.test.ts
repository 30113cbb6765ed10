import { describe, expect, test } from 'vitest';
import type { Area } from '@/lib/areas';
import { type Belief, beliefFromWorkOrder } from '@/lib/diagnosis/belief';
import { simulateParticles } from '@/lib/diagnosis/particles';
import type { FindingAct, ReadingAct } from '@/lib/grading/acts';
import type { FindingGrade } from '@/lib/grading/grade';
import { beliefAfter, gradeFinding, judgedFinding } from '@/lib/grading/grade-finding';
import { catalogue } from '../../support/bench-rig';
import { aCase, judged, taken } from '../../support/worked-attempt';

const weakPump = aCase({ cause: 'lift-pump-weak' });
const particles = simulateParticles(weakPump.rig, weakPump.setting, catalogue);
const start = beliefFromWorkOrder(particles, weakPump.workOrder);

/** A low-range dial at the main-filter inlet, showing what the test says; the limit is 70 kPa, 10.15 psi. */
function aPrimeReading(psi: number): ReadingAct & { seq: number } {
  const read = taken(weakPump, 1, { check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' });
  return { ...read, shown: [{ kind: 'value', quantity: 'prime-pressure', value: psi, unit: 'psi' }] };
}

function graded(
  reading: ReadingAct & { seq: number },
  changes: Partial<FindingAct> = {},
  from: Belief = start,
): FindingGrade {
  const finding = judgedFinding(2, judged(weakPump, 2, reading, changes), reading, catalogue);
  if (!finding) throw new Error('Nothing to grade');
  return gradeFinding(finding, weakPump, particles, from, beliefAfter(finding, from, particles));
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

describe('reading the dial', () => {
  test('half of the smallest division is near enough', () => {
    expect(graded(aPrimeReading(5), { entered: { value: 5.25, unit: 'psi' } }).dialRight).toBe(true);
    expect(graded(aPrimeReading(5), { entered: { value: 5.5, unit: 'psi' } }).dialRight).toBe(false);
  });

  test('another unit of pressure is as good', () => {
    expect(graded(aPrimeReading(5), { entered: { value: 34.5, unit: 'kPa' } }).dialRight).toBe(true);
  });

  test('a misread dial, judged as it was read, keeps verdict and comparison and is reported apart', () => {
    const misread = { entered: { value: 15, unit: 'psi' }, verdict: 'pass', comparison: 'within' } as const;
    expect(graded(aPrimeReading(5), misread)).toMatchObject({
      expectedVerdict: 'fail',
      dialRight: false,
      verdictRight: true,
      comparisonRight: true,
    });
  });

  test('a misread dial does not excuse a verdict that fits neither', () => {
    const misread = { entered: { value: 15, unit: 'psi' }, verdict: 'cannot-tell', comparison: 'too-close' } as const;
    expect(graded(aPrimeReading(5), misread)).toMatchObject({ verdictRight: false, comparisonRight: false });
  });

  test('where the instrument prints its value there is no dial to read', () => {
    const read = taken(weakPump, 1, { check: 'rail-pressure', condition: 'key-off', instrument: 'data-display' });
    expect(graded(read).dialRight).toBeNull();
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
    expect(grade.clears).toEqual([{ area: 'priming', right: true }]);
    expect(grade.suspects).toEqual([{ area: 'priming', right: false }]);
  });

  test('an area that nothing speaks for any more is cleared, whether or not this reading did it', () => {
    const settled = Float64Array.from(particles, ({ cause }) => (cause === 'lift-pump-weak' ? 0.2 : 0));
    const grade = graded(aPrimeReading(5), { clears: ['returns'] }, settled);
    expect(grade.clears).toEqual([{ area: 'returns', right: true }]);
  });
});

describe('a finding that judges nothing measured', () => {
  const reading = aPrimeReading(5);
  const finding = judged(weakPump, 2, reading);

  test.each<[string, FindingAct, ReadingAct | undefined]>([
    ['no such reading', finding, undefined],
    ['a check that content does not have', finding, { ...reading, check: 'compression' }],
    ['an instrument that content does not have', finding, { ...reading, instrument: 'stethoscope' }],
    ['a quantity that the check does not have', { ...finding, quantity: 'noise' }, reading],
    ['a destroyed instrument', finding, { ...reading, shown: [{ kind: 'destroyed', quantity: 'prime-pressure' }] }],
  ])('is left out: %s', (_why, act, read) => {
    expect(judgedFinding(2, act, read, catalogue)).toBeUndefined();
  });
});
