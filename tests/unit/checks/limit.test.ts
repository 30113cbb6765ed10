import { expect, test } from 'vitest';
import { findLimit, limitBounds } from '@/lib/checks/limit';
import { aRig } from '../../support/bench-rig';

test('the line of the sheet is that of check, condition and quantity together', () => {
  const line = findLimit(aRig(), 'gear-pump-pressure', 'idle', 'gear-pump-pressure');
  expect(line?.id).toBe('gear-pump-pressure-idle');
  expect(findLimit(aRig(), 'gear-pump-pressure', 'full-load', 'gear-pump-pressure')?.id).not.toBe(line?.id);
});

test('the sheet has no line for what nobody judges', () => {
  expect(findLimit(aRig(), 'rail-pressure', 'idle', 'commanded-rail-pressure')).toBeUndefined();
  expect(findLimit(aRig(), 'gear-pump-pressure', 'key-off', 'gear-pump-pressure')).toBeUndefined();
});

const line = {
  id: 'a-limit',
  check: 'a-check',
  condition: 'idle',
  quantity: 'a-quantity',
  source: { kind: 'assumed', because: 'A limit for tests' },
} as const;

test('bounds come out in SI, and a side without a bound stays without', () => {
  expect(limitBounds({ ...line, min: 70, unit: 'kPa' })).toEqual({ min: 70e3 });
  expect(limitBounds({ ...line, max: 4, unit: '%' })).toEqual({ max: 0.04 });
  expect(limitBounds({ ...line, min: 0, max: 1, unit: 'MPa' })).toEqual({ min: 0, max: 1e6 });
});
