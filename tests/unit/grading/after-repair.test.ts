import { expect, test } from 'vitest';
import { appliesTo } from '@/lib/faults/apply-cause';
import { readingsMovedByRepair, trueVerdict } from '@/lib/grading/after-repair';
import { aRig, catalogue, stateOf } from '../../support/bench-rig';
import { aCase } from '../../support/worked-attempt';

function movedIn(cause: string, severity = 0.8) {
  const theCase = aCase({ cause, severity });
  return readingsMovedByRepair(theCase, catalogue, stateOf(theCase.rig, theCase.setting));
}

test('the repair of a plugged screen brings its drop and the rail right', () => {
  const moved = movedIn('inlet-screen-plugged');
  const drop = moved.find(({ quantity, condition }) => quantity === 'screen-drop' && condition === 'full-load');
  expect(drop).toMatchObject({ limit: 'screen-drop-full-load', verdictBefore: 'fail', verdictAfter: 'pass' });
  expect(drop?.after).toBeLessThan(drop?.before ?? 0);
});

test('what the repair brings right is told first', () => {
  const changed = movedIn('injector-leakage-high').map(
    ({ verdictBefore, verdictAfter }) => verdictBefore !== verdictAfter,
  );
  expect(changed).toContain(true);
  expect(changed.lastIndexOf(true)).toBe(changed.filter(Boolean).length - 1);
});

test('nothing passes before and fails after', () => {
  for (const { id } of [...catalogue.causes.values()].filter((cause) => appliesTo(aRig(), cause))) {
    for (const { verdictBefore, verdictAfter } of movedIn(id)) {
      expect(`${verdictBefore} ${verdictAfter}`).not.toBe('pass fail');
    }
  }
});

test('where nothing was broken nothing moves', () => {
  expect(movedIn('no-fuel-fault')).toEqual([]);
});

test('an engine that did not start has nothing to show from running conditions', () => {
  const moved = movedIn('relief-valve-leaking', 1);
  expect(moved.length).toBeGreaterThan(0);
  expect(moved.filter(({ condition }) => condition === 'idle' || condition === 'full-load')).toEqual([]);
});

test('the true value is judged without any allowance, and not at all without a line', () => {
  const judge = (value: number, quantity = 'prime-pressure') =>
    trueVerdict(aRig(), 'prime-pressure', 'key-on', quantity, value);
  expect(judge(70e3)).toBe('pass');
  expect(judge(69.9e3)).toBe('fail');
  expect(judge(70e3, 'noise')).toBe('cannot-tell');
});
