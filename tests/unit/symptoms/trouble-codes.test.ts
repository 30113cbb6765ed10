import { expect, test } from 'vitest';
import type { CodeRule } from '@/lib/rig/rig';
import { troubleCodes } from '@/lib/symptoms/trouble-codes';
import { aRig, healthyPoints } from '../../support/bench-rig';

const points = healthyPoints();
const rail: CodeRule = { spn: 157, fmi: 0, condition: 'idle', value: 'railShare', above: 0.5 };

function codesOf(...codes: CodeRule[]) {
  return troubleCodes({ ...aRig(), codes }, points);
}

test('a healthy rig stores nothing', () => {
  expect(troubleCodes(aRig(), points)).toEqual([]);
});

test('a rule stores its code when the value lies beyond its bound', () => {
  expect(codesOf(rail)).toEqual([{ spn: 157, fmi: 0 }]);
  expect(codesOf({ ...rail, above: 1.5 })).toEqual([]);
  expect(codesOf({ spn: 94, fmi: 1, condition: 'idle', value: 'deliveryPressure', below: 1e9 })).toEqual([
    { spn: 94, fmi: 1 },
  ]);
});

test('of one suspect parameter only the first rule that holds stores a code', () => {
  expect(codesOf({ ...rail, above: 9 }, { ...rail, fmi: 16 }, { ...rail, fmi: 15 })).toEqual([{ spn: 157, fmi: 16 }]);
});

test('a value that the state does not have stores nothing', () => {
  expect(codesOf({ ...rail, value: 'oilPressure' })).toEqual([]);
});
