import { describe, expect, test } from 'vitest';
import { frictionFactor } from '@/lib/hydraulics/elements/friction';

describe("Churchill's friction factor", () => {
  // Published: CalebBell/fluids, tests/test_friction.py, Churchill_1977; eleven figures printed.
  test('Re 1e5, ε/D 1e-4 gives 0.018462624566', () => {
    expect(Math.abs(frictionFactor(1e5, 1e-4) - 0.018462624566)).toBeLessThanOrEqual(1e-12);
  });

  // Analytic: Hagen–Poiseuille. Churchill adds 0.13 % at Re 2000.
  test.each([
    { reynolds: 1, factor: 64, tolerance: 1e-12 },
    { reynolds: 100, factor: 0.64, tolerance: 1e-12 },
    { reynolds: 1000, factor: 0.064, tolerance: 1e-10 },
    { reynolds: 2000, factor: 0.032, tolerance: 2e-3 },
  ])('laminar flow at Re $reynolds gives 64/Re', ({ reynolds, factor, tolerance }) => {
    expect(Math.abs(frictionFactor(reynolds, 1e-3) / factor - 1)).toBeLessThanOrEqual(tolerance);
  });

  // Columns: Churchill's formula, computed by another program (five decimals printed, so ±0.6e-6); Colebrook's
  // equation, solved by another program. Colebrook is what Moody's chart draws; Churchill is a fit to it and may miss it
  // by 3.5 % at most (worst here 3.1 %, Re 4000).
  test.each([
    { reynolds: 4e3, roughness: 0, churchill: 0.04059, colebrook: 0.039907 },
    { reynolds: 4e3, roughness: 1e-4, churchill: 0.040706, colebrook: 0.040008 },
    { reynolds: 4e3, roughness: 1e-3, churchill: 0.041728, colebrook: 0.04091 },
    { reynolds: 4e3, roughness: 0.01, churchill: 0.050578, colebrook: 0.049082 },
    { reynolds: 4e3, roughness: 0.05, churchill: 0.076525, colebrook: 0.076987 },
    { reynolds: 1e4, roughness: 0, churchill: 0.031002, colebrook: 0.030883 },
    { reynolds: 1e4, roughness: 1e-4, churchill: 0.031178, colebrook: 0.031037 },
    { reynolds: 1e4, roughness: 1e-3, churchill: 0.03269, colebrook: 0.032382 },
    { reynolds: 1e4, roughness: 0.01, churchill: 0.044044, colebrook: 0.043127 },
    { reynolds: 1e4, roughness: 0.05, churchill: 0.075009, colebrook: 0.073801 },
    { reynolds: 3e4, roughness: 0, churchill: 0.023392, colebrook: 0.023483 },
    { reynolds: 3e4, roughness: 1e-4, churchill: 0.023699, colebrook: 0.023753 },
    { reynolds: 3e4, roughness: 1e-3, churchill: 0.026138, colebrook: 0.02597 },
    { reynolds: 3e4, roughness: 0.01, churchill: 0.040325, colebrook: 0.039822 },
    { reynolds: 3e4, roughness: 0.05, churchill: 0.072819, colebrook: 0.072314 },
    { reynolds: 1e5, roughness: 0, churchill: 0.017875, colebrook: 0.01799 },
    { reynolds: 1e5, roughness: 1e-4, churchill: 0.018463, colebrook: 0.018514 },
    { reynolds: 1e5, roughness: 1e-3, churchill: 0.022343, colebrook: 0.022175 },
    { reynolds: 1e5, roughness: 0.01, churchill: 0.038734, colebrook: 0.038504 },
    { reynolds: 1e5, roughness: 0.05, churchill: 0.07195, colebrook: 0.071781 },
    { reynolds: 1e6, roughness: 0, churchill: 0.011612, colebrook: 0.011645 },
    { reynolds: 1e6, roughness: 1e-4, churchill: 0.013508, colebrook: 0.013441 },
    { reynolds: 1e6, roughness: 1e-3, churchill: 0.020022, colebrook: 0.019943 },
    { reynolds: 1e6, roughness: 0.01, churchill: 0.037991, colebrook: 0.037965 },
    { reynolds: 1e6, roughness: 0.05, churchill: 0.071559, colebrook: 0.071574 },
    { reynolds: 1e8, roughness: 0, churchill: 0.006028, colebrook: 0.00594 },
    { reynolds: 1e8, roughness: 1e-4, churchill: 0.012005, colebrook: 0.011999 },
    { reynolds: 1e8, roughness: 1e-3, churchill: 0.019633, colebrook: 0.019639 },
    { reynolds: 1e8, roughness: 0.01, churchill: 0.037885, colebrook: 0.037904 },
    { reynolds: 1e8, roughness: 0.05, churchill: 0.071503, colebrook: 0.071551 },
  ])('Re $reynolds, ε/D $roughness', ({ reynolds, roughness, churchill, colebrook }) => {
    const factor = frictionFactor(reynolds, roughness);
    expect(Math.abs(factor - churchill)).toBeLessThanOrEqual(6e-7);
    expect(Math.abs(factor / colebrook - 1)).toBeLessThanOrEqual(0.035);
  });

  // Computed: Re 2000, 0.032043 on the page of check values (laminar, with the first trace of transition).
  test('transition begins smoothly', () => {
    expect(Math.abs(frictionFactor(2000, 0) - 0.032043)).toBeLessThanOrEqual(6e-7);
  });
});
