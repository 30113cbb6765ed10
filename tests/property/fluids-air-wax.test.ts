import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { releasedAir } from '@/lib/fluids/dissolved-air';
import { waxLoading } from '@/lib/fluids/wax';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('air in solution', () => {
  const bunsen = between(0.05, 0.2);
  const kelvin = between(233, 423);

  test('stays there at and above the saturation pressure', () => {
    fc.assert(
      fc.property(bunsen, kelvin, between(1e3, 1e5), between(1, 100), (solubility, temperature, saturation, ratio) => {
        expect(releasedAir(solubility, saturation, saturation * ratio, temperature)).toBe(0);
      }),
    );
  });

  // What is left in solution at p and what is free there make up what was dissolved at p0, each as gas at 273.15 K.
  test('is neither made nor lost in coming out', () => {
    fc.assert(
      fc.property(bunsen, kelvin, between(5e4, 1e5), between(0.05, 1), (solubility, temperature, saturation, ratio) => {
        const pressure = saturation * ratio;
        const free = (releasedAir(solubility, saturation, pressure, temperature) * pressure * 273.15) / temperature;
        expect((solubility * pressure + free) / (solubility * saturation)).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe('wax on a filter', () => {
  const points = fc
    .record({ cloudPoint: between(235, 285), span: between(0, 25) })
    .map(({ cloudPoint, span }) => ({ cloudPoint, filterability: cloudPoint - span }));
  const rating = between(1e-6, 3e-4);

  test('does nothing at and above the cloud point', () => {
    fc.assert(
      fc.property(points, rating, between(0, 200), (wax, size, above) => {
        expect(waxLoading(wax, wax.cloudPoint + above, size)).toBe(1);
      }),
    );
  });

  test('sets in without a kink at the cloud point', () => {
    fc.assert(
      fc.property(points, rating, (wax, size) => {
        // A slope that starts from nothing: over a tenth of the depth it is a tenth as steep, while the bound is far off.
        const slopeOver = (depth: number) => (waxLoading(wax, wax.cloudPoint - depth, size) - 1) / depth;
        expect(slopeOver(1e-3) / slopeOver(1e-2)).toBeCloseTo(0.1, 2);
      }),
    );
  });

  test('loads the more, the colder the fuel and the finer the medium', () => {
    fc.assert(
      fc.property(points, rating, between(0.01, 50), between(0.01, 5), (wax, size, depth, more) => {
        const temperature = wax.cloudPoint - depth;
        const here = waxLoading(wax, temperature, size);
        expect(waxLoading(wax, temperature - more, size)).toBeGreaterThan(here);
        expect(waxLoading(wax, temperature, size / (1 + more))).toBeGreaterThan(here);
        expect(here).toBeGreaterThan(1);
        expect(here).toBeLessThan(1e4);
      }),
    );
  });
});
