import { expect, test } from 'vitest';
import type { CallAct } from '@/lib/grading/acts';
import { gradeCall } from '@/lib/grading/grade-call';
import { catalogue, stateOf } from '../../support/bench-rig';
import { aCase, rightCall } from '../../support/worked-attempt';

const plugged = aCase({ cause: 'inlet-screen-plugged' });

function graded(changes: Partial<CallAct> = {}, theCase = plugged) {
  return gradeCall(theCase, catalogue, stateOf(theCase.rig, theCase.setting), rightCall(theCase, 9, changes));
}

function codes(changes: Partial<CallAct>, theCase = plugged): string[] {
  return graded(changes, theCase).notes.map(({ code }) => code);
}

test.each([...catalogue.causes.keys()])('cause, repair and proof of %s earn everything', (cause) => {
  const grade = graded({}, aCase({ cause }));
  expect(grade.share).toBeCloseTo(1, 12);
  expect(grade.correct).toEqual({ cause: true, area: true, repair: true, proof: true });
  expect(grade.notes.map(({ code }) => code)).toEqual(['cause-right', 'repair-right', 'proof-right']);
});

test('the right area with the wrong cause earns part of the cause’s marks', () => {
  const call = { cause: 'main-filter-plugged', repair: 'replace-main-filter' };
  expect(codes(call)).toEqual(['area-right', 'repair-wrong', 'proof-right']);
  const [area, wrong] = [graded(call).share, graded({ ...call, cause: 'injector-leakage-high' }).share];
  expect(area).toBeGreaterThan(wrong);
  expect(area).toBeLessThan(graded({ ...call, cause: 'inlet-screen-plugged' }).share);
});

test('the wrong area earns nothing for the cause', () => {
  expect(codes({ cause: 'rail-sensor-reads-high' })).toEqual(['cause-wrong', 'repair-right', 'proof-right']);
});

test('a repair that the cause does not need is wrong', () => {
  expect(codes({ repair: 'replace-gear-pump' })).toEqual(['cause-right', 'repair-wrong', 'proof-right']);
});

test('a check that the fault does not move proves nothing', () => {
  expect(codes({ proof: { check: 'prime-pressure', condition: 'key-on' } })).toContain('proof-wrong');
});

test('codes that are gone prove no repair', () => {
  expect(plugged.workOrder.codes.length).toBeGreaterThan(0);
  expect(codes({ proof: { check: 'trouble-codes', condition: 'key-on' } })).toContain('proof-wrong');
});

test('a check that nobody judges proves nothing', () => {
  expect(codes({ proof: { check: 'rail-pressure', condition: 'key-on' } })).toContain('proof-wrong');
});

test('proof is computed: any check that fails before the repair and passes after it will do', () => {
  const { points, rig } = plugged;
  const railShare = points['full-load'].values.railShare ?? 1;
  const limit = rig.limits.find(({ id }) => id === 'sensed-rail-pressure-full-load');
  // At this severity the rail falls under its limit at full load, so the rail pressure proves the screen as well.
  expect(railShare * 180).toBeLessThan(limit?.min ?? 0);
  expect(codes({ proof: { check: 'rail-pressure', condition: 'full-load' } })).toContain('proof-right');
});

test('a check that the repaired rig fails as well proves nothing', () => {
  const { rig } = plugged;
  const limits = rig.limits.map((line) => (line.check === 'screen-drop' ? { ...line, max: 0.001 } : line));
  expect(codes({}, { ...plugged, rig: { ...rig, limits } })).toContain('proof-wrong');
});

test('where nothing is broken any check that passes shows it', () => {
  const sound = aCase({ cause: 'no-fuel-fault' });
  expect(codes({ proof: { check: 'prime-pressure', condition: 'key-on' } }, sound)).toContain('proof-right');
});

test('a check that content does not have proves nothing', () => {
  expect(codes({ proof: { check: 'compression', condition: 'idle' } })).toContain('proof-wrong');
});
