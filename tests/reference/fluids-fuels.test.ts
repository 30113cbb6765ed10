import { describe, expect, test } from 'vitest';
import biodiesel from '@/content/fuels/biodiesel-blend.json';
import calibration from '@/content/fuels/calibration-fluid.json';
import summer from '@/content/fuels/summer-grade.json';
import winter from '@/content/fuels/winter-grade.json';
import { type Fuel, fuelSchema } from '@/lib/fluids/fuel';
import { fitFuel, fuelState } from '@/lib/fluids/fuel-state';
import { waxLoading } from '@/lib/fluids/wax';

const grades = [summer, winter].map((content) => fuelSchema.parse(content));

function expectWithin(value: number, [least, most]: readonly [number, number]) {
  expect(value).toBeGreaterThanOrEqual(least);
  expect(value).toBeLessThanOrEqual(most);
}

describe.each(grades)('$id', (fuel) => {
  // EN 590, temperate climates (published; limits as restated by Wikipedia and ncheurope.com).
  test('keeps the limits of EN 590', () => {
    expectWithin(fuel.density15, [820, 845]);
    expectWithin(fuel.viscosity40, [2, 4.5]);
    expect(fuel.flashPointC).toBeGreaterThan(55);
  });
});

// EN 590 classes of plugging point for temperate climates, at most: A +5, B 0, C −5, D −10, E −15, F −20 °C (published,
// as restated by sorwabuco.com).
test.each([
  { content: summer, name: 'C', most: -5, next: -10 },
  { content: winter, name: 'F', most: -20, next: Number.NEGATIVE_INFINITY },
])('$content.id is of class $name', ({ content, most, next }) => {
  expect(content.filterabilityC).toBeLessThanOrEqual(most);
  expect(content.filterabilityC).toBeGreaterThan(next);
});

// ISO 4113, basic fluid (published; text of KS R ISO 4113:2012).
test('the calibration fluid keeps the limits of ISO 4113', () => {
  const fluid = fuelSchema.parse(calibration);
  expectWithin(fluid.density15, [820, 830]);
  expectWithin(fluid.viscosity40, [2.45, 2.75]);
  expect(fluid.flashPointC).toBeGreaterThanOrEqual(75);
});

describe('the biodiesel blend', () => {
  const blend = fuelSchema.parse(biodiesel);

  // ASTM D7467, B6 to B20, table 1 (published).
  test('keeps the limits of ASTM D7467', () => {
    expectWithin(blend.viscosity40, [1.9, 4.1]);
    expect(blend.flashPointC).toBeGreaterThanOrEqual(52);
  });

  // EN 14214 (published): an ester of 860 to 900 kg/m³ and 3.5 to 5.0 mm²/s. Volumes add, and so do densities; a blend is
  // thinner than the mean of its parts' viscosities and thicker than the thinner one.
  test('is a fifth of ester in the summer grade', () => {
    expectWithin(blend.density15, [0.8 * summer.density15 + 0.2 * 860, 0.8 * summer.density15 + 0.2 * 900]);
    expectWithin(blend.viscosity40, [summer.viscosity40, 0.8 * summer.viscosity40 + 0.2 * 5]);
  });
});

describe('wax at the plugging point', () => {
  /**
   * How many times as fast cold fuel would pass the bare mesh of the plugging test as the test calls plugged: EN 116
   * draws 20 mL in 60 s under 2 kPa through wires 77 µm apart with openings of 45 µm, 12 mm across (mesh: ISO 3310-1;
   * holder and volume from memory). An opening passes r³·Δp/(3·μ) (Sampson 1891).
   */
  function bareOverPlugged(fuel: Fuel): number {
    const { viscosity } = fuelState(fitFuel(fuel), fuel.filterabilityC + 273.15);
    const openings = (Math.PI * 6e-3 ** 2) / 77e-6 ** 2;
    const perOpening = (22.5e-6 ** 3 * 2000) / (3 * viscosity);
    return (openings * perOpening) / (20e-6 / 60);
  }

  // Analytic estimate. A factor of 2 either way: the openings are square, the fuel that is lifted takes its part of the
  // 2 kPa, and fuels are not equally thick at their plugging points.
  test.each(grades)('loads a 45 µm medium as the plugging test of $id does', (fuel) => {
    const factor = waxLoading(
      { cloudPoint: fuel.cloudPointC + 273.15, filterability: fuel.filterabilityC + 273.15 },
      fuel.filterabilityC + 273.15,
      45e-6,
    );
    expectWithin(factor / bareOverPlugged(fuel), [0.5, 2]);
  });
});
