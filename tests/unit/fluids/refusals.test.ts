import { describe, expect, test } from 'vitest';
import { bunsenCoefficient, releasedAir } from '@/lib/fluids/dissolved-air';
import { waxLoading } from '@/lib/fluids/wax';

describe('air in solution', () => {
  test('a density outside the standard is refused by value', () => {
    expect(() => bunsenCoefficient(950, 300)).toThrow(/950 kg\/m³.*630 to 900/);
    expect(() => bunsenCoefficient(Number.NaN, 300)).toThrow(RangeError);
  });

  test('gas without pressure is refused', () => {
    expect(() => releasedAir(0.11, 1e5, 0, 300)).toThrow(/0 Pa.*above zero/);
    expect(() => releasedAir(0.11, 1e5, -1, 300)).toThrow(/-1 Pa/);
  });
});

describe('wax on a filter', () => {
  const points = { cloudPoint: 274.15, filterability: 274.15 };

  test('a medium without openings is refused', () => {
    expect(() => waxLoading(points, 270, 0)).toThrow(/0 m.*above zero/);
  });

  test('a fuel that plugs where it clouds is taken to do so over one kelvin', () => {
    expect(waxLoading(points, points.cloudPoint, 45e-6)).toBe(1);
    expect(waxLoading(points, points.cloudPoint - 1, 45e-6)).toBeCloseTo(50, 9);
  });

  test('no cold makes a medium quite impassable', () => {
    expect(waxLoading(points, 100, 1e-6)).toBeLessThanOrEqual(1e4);
  });
});
