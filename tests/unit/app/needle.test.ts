import { expect, test } from 'vitest';
import { angleOf, pointerAngle, swingOf } from '@/app/_ui/gauges/needle';

const range = { min: 0, max: 100 };

test('the scale runs over 270°, its middle straight up', () => {
  expect(angleOf(0, range)).toBe(135);
  expect(angleOf(50, range)).toBe(270);
  expect(angleOf(100, range)).toBe(405);
});

test('a needle that stands still has no swing, and neither has one on its stop', () => {
  expect(swingOf({ at: 50 }, range)).toBeUndefined();
  expect(swingOf({ at: 50, flutter: 0 }, range)).toBeUndefined();
  expect(swingOf({ stop: 'high' }, range)).toBeUndefined();
});

test('a needle swings evenly about where it stands, as far as its stops let it', () => {
  expect(swingOf({ at: 50, flutter: 10 }, range)).toEqual({ from: 243, to: 297 });
  expect(swingOf({ at: 2, flutter: 20 }, range)?.from).toBe(pointerAngle({ stop: 'low' }, range));
  expect(swingOf({ at: 99, flutter: 20 }, range)?.to).toBe(pointerAngle({ stop: 'high' }, range));
});
