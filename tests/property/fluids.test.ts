import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import summer from '@/content/fuels/summer-grade.json';
import winter from '@/content/fuels/winter-grade.json';
import { airDensity, ambientPressure } from '@/lib/fluids/atmosphere';
import { bulkModulus } from '@/lib/fluids/bulk-modulus';
import { densityAt } from '@/lib/fluids/density';
import { fuelSchema } from '@/lib/fluids/fuel';
import { fitFuel, fuelState } from '@/lib/fluids/fuel-state';
import { vapourPressure } from '@/lib/fluids/vapour-pressure';
import { fitWalther, kinematicViscosity } from '@/lib/fluids/viscosity';

const densities = fc.double({ min: 771, max: 1074, noNaN: true });
const celsius = fc.double({ min: -30, max: 140, noNaN: true });
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

describe.each([summer, winter])('the fuel $id', (content) => {
  const fuel = fuelSchema.parse(content);

  test('keeps the limits of EN 590 for temperate climates', () => {
    expect(fuel.density15).toBeGreaterThanOrEqual(820);
    expect(fuel.density15).toBeLessThanOrEqual(845);
    expect(fuel.viscosity40).toBeGreaterThanOrEqual(2);
    expect(fuel.viscosity40).toBeLessThanOrEqual(4.5);
  });

  test('has a state at any temperature of a fuel system', () => {
    const fitted = fitFuel(fuel);
    fc.assert(
      fc.property(kelvin, (temperature) => {
        const state = fuelState(fitted, temperature);
        expect(state.viscosity).toBeGreaterThan(fuelState(fitted, temperature + 0.1).viscosity);
        // Kinematic viscosity is what was measured at 40 °C; the state holds the dynamic one.
        expect(state.viscosity / state.density).toBeGreaterThan(0.5e-6);
        expect(state.viscosity / state.density).toBeLessThan(60e-6);
      }),
    );
  });
});
