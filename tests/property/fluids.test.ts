import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import biodiesel from '@/content/fuels/biodiesel-blend.json';
import calibration from '@/content/fuels/calibration-fluid.json';
import summer from '@/content/fuels/summer-grade.json';
import winter from '@/content/fuels/winter-grade.json';
import { airDensity, ambientPressure, STANDARD_PRESSURE } from '@/lib/fluids/atmosphere';
import { bulkModulus } from '@/lib/fluids/bulk-modulus';
import { densityAt, expansionAt } from '@/lib/fluids/density';
import { fuelSchema } from '@/lib/fluids/fuel';
import { fitFuel, fuelState } from '@/lib/fluids/fuel-state';
import { heatCapacity } from '@/lib/fluids/heat-capacity';
import { vapourPressure } from '@/lib/fluids/vapour-pressure';
import { fitWalther, kinematicViscosity } from '@/lib/fluids/viscosity';
import { compressed } from '../support/compressed';

const densities = fc.double({ min: 771, max: 1074, noNaN: true });
/** What a rig may meet, from a cold start in the north to fuel that leaks back from the rail. */
const celsius = fc.double({ min: -40, max: 150, noNaN: true });
const kelvin = celsius.map((t) => t + 273.15);

describe('density', () => {
  test.each([787.5, 788, 838.5, 839])('does not jump where a commodity group ends, at %d kg/m³', (edge) => {
    fc.assert(
      fc.property(kelvin, (temperature) => {
        // The density itself moves by 1e-6 here; a jump in the expansion coefficient would be 1e-2 at 40 K.
        const jump = densityAt(edge + 5e-7, temperature) - densityAt(edge - 5e-7, temperature);
        expect(Math.abs(jump)).toBeLessThanOrEqual(1e-5);
      }),
    );
  });

  test('rises with density at 15 °C and falls with temperature', () => {
    fc.assert(
      fc.property(densities, kelvin, fc.double({ min: 0.01, max: 20, noNaN: true }), (density15, temperature, more) => {
        const here = densityAt(density15, temperature);
        if (density15 + more <= 1075) expect(densityAt(density15 + more, temperature)).toBeGreaterThan(here);
        expect(densityAt(density15, temperature + more)).toBeLessThan(here);
      }),
    );
  });

  test('falls with temperature as its expansion says', () => {
    fc.assert(
      fc.property(densities, kelvin, (density15, temperature) => {
        // The third derivative times step² is some 1e-9 of the slope; rounding over the step, 1e-12.
        const step = 0.05;
        const at = (shift: number) => Math.log(densityAt(density15, temperature + shift));
        const numeric = (at(-step) - at(step)) / (2 * step);
        expect(Math.abs(numeric / expansionAt(density15, temperature) - 1)).toBeLessThanOrEqual(1e-8);
      }),
    );
  });
});

describe('viscosity', () => {
  const points = fc.record({
    cool: fc.double({ min: 1.2, max: 8, noNaN: true }),
    ratio: fc.double({ min: 0.3, max: 0.6, noNaN: true }),
  });

  test('falls with temperature and passes through the measured points', () => {
    fc.assert(
      fc.property(points, celsius, fc.double({ min: 0.01, max: 20, noNaN: true }), ({ cool, ratio }, t, more) => {
        const [first, second] = [
          { temperature: 313.15, viscosity: cool * 1e-6 },
          { temperature: 373.15, viscosity: cool * ratio * 1e-6 },
        ];
        const line = fitWalther(first, second);
        // The standard's inverse misses its own Z(ν) by up to 4e-3 near the lower end of its range.
        expect(Math.abs(kinematicViscosity(line, 313.15) / first.viscosity - 1)).toBeLessThanOrEqual(4e-3);
        expect(Math.abs(kinematicViscosity(line, 373.15) / second.viscosity - 1)).toBeLessThanOrEqual(4e-3);
        const warmest = Math.min(t, 100) + 273.15;
        expect(kinematicViscosity(line, warmest)).toBeLessThan(kinematicViscosity(line, warmest - more));
      }),
    );
  });
});

describe('compressibility, vapour and air', () => {
  test('fuel stiffens with pressure and softens with heat', () => {
    fc.assert(
      fc.property(
        densities,
        kelvin,
        fc.double({ min: 1e5, max: 2e8, noNaN: true }),
        (density15, temperature, pressure) => {
          const here = bulkModulus(density15, temperature, pressure);
          expect(bulkModulus(density15, temperature, pressure + 1e5)).toBeGreaterThan(here);
          expect(bulkModulus(density15, temperature + 1, pressure)).toBeLessThan(here);
        },
      ),
    );
  });

  test('fuel grows denser with pressure as its modulus says', () => {
    fc.assert(
      fc.property(
        densities,
        kelvin,
        fc.double({ min: 3e3, max: 2e8, noNaN: true }),
        (density15, temperature, gauge) => {
          const ambient = bulkModulus(density15, temperature, STANDARD_PRESSURE);
          // No step below ambient, where a store goes on along its tangent.
          const step = 3e3;
          const rise = Math.log(compressed(ambient, gauge + step) / compressed(ambient, gauge - step)) / (2 * step);
          // Third derivative times step²: up to 33·(step/modulus)², 1e-9. Rounding of the densities over the rise: 1e-10.
          const modulus = bulkModulus(density15, temperature, STANDARD_PRESSURE + gauge);
          expect(Math.abs(rise * modulus - 1)).toBeLessThanOrEqual(1e-8);
        },
      ),
    );
  });

  test('hot fuel takes more heat than cold, heavy fuel less than light', () => {
    fc.assert(
      fc.property(densities, kelvin, (density15, temperature) => {
        const here = heatCapacity(density15, temperature);
        expect(here).toBeGreaterThan(1400);
        expect(heatCapacity(density15, temperature + 1)).toBeGreaterThan(here);
        expect(heatCapacity(density15 + 1, temperature)).toBeLessThan(here);
      }),
    );
  });

  test('vapour pressure rises with temperature', () => {
    fc.assert(
      fc.property(kelvin, (temperature) => {
        expect(vapourPressure(temperature + 0.1)).toBeGreaterThan(vapourPressure(temperature));
      }),
    );
  });

  test('air thins with height and with heat', () => {
    fc.assert(
      fc.property(fc.double({ min: -400, max: 5000, noNaN: true }), kelvin, (altitude, temperature) => {
        const pressure = ambientPressure(altitude);
        expect(ambientPressure(altitude + 1)).toBeLessThan(pressure);
        expect(airDensity(pressure, temperature + 1)).toBeLessThan(airDensity(pressure, temperature));
      }),
    );
  });
});

describe.each([summer, winter, biodiesel, calibration])('the fuel $id', (content) => {
  const fitted = fitFuel(fuelSchema.parse(content));

  test('has a state at any temperature of a fuel system', () => {
    fc.assert(
      fc.property(kelvin, (temperature) => {
        const state = fuelState(fitted, temperature);
        for (const value of Object.values(state)) expect(value > 0 && Number.isFinite(value)).toBe(true);
        const warmer = fuelState(fitted, temperature + 0.1);
        expect(state.viscosity).toBeGreaterThan(warmer.viscosity);
        expect(state.modulus).toBeGreaterThan(warmer.modulus);
        // Kinematic viscosity is what was measured at 40 °C; the state holds the dynamic one.
        expect(state.viscosity / state.density).toBeGreaterThan(0.5e-6);
        expect(state.viscosity / state.density).toBeLessThan(100e-6);
      }),
    );
  });
});
