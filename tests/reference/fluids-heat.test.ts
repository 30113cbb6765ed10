import { describe, expect, test } from 'vitest';
import { expansionAt } from '@/lib/fluids/density';
import { heatCapacity } from '@/lib/fluids/heat-capacity';
import { toSi } from '@/lib/units';

// Strength of each reference: see fluids.test.ts.

const BTU_PER_POUND_FAHRENHEIT = 4186.8;

describe('heat capacity', () => {
  // Published, second-hand: an answer worked out in an engineers' forum (eng-tips thread 143284), 0.444480624 Btu/(lb·°F)
  // for specific gravity 0.91 at 80 °F by (0.388 + 0.00045·t)/√s. The metric constants are rounded to 0.0004 of it.
  // 0.91 × 999.016 kg/m³ at 60 °F is 909.48 kg/m³ at 15 °C.
  test('a crude of 0.91 at 80 °F takes 0.44448 Btu/(lb·°F)', () => {
    const customary = heatCapacity(909.48, toSi(80, '°F')) / BTU_PER_POUND_FAHRENHEIT;
    expect(Math.abs(customary / 0.444480624 - 1)).toBeLessThanOrEqual(5e-4);
  });

  // Cragoe's equation for s = 0.835, which is 834.57 kg/m³ at 15 °C. Computed; four figures printed.
  test.each([
    { celsius: 20, kilojoules: 1.918 },
    { celsius: 40, kilojoules: 1.993 },
    { celsius: 60, kilojoules: 2.067 },
    { celsius: 80, kilojoules: 2.142 },
  ])('a fuel of 0.835 takes $kilojoules kJ/(kg·K) at $celsius °C', ({ celsius, kilojoules }) => {
    expect(Math.abs(heatCapacity(834.57, toSi(celsius, '°C')) / 1e3 - kilojoules)).toBeLessThanOrEqual(5.5e-4);
  });

  // Published: Sonntag, Borgnakke & Van Wylen, table of liquids, kerosene 2.0 kJ/(kg·K) at 25 °C, as quoted by
  // amesweb.info (its density of 815 kg/m³ from memory). Cragoe claims 4 %; the table prints two figures.
  test('kerosene at 25 °C takes 2.0 kJ/(kg·K)', () => {
    expect(Math.abs(heatCapacity(815, toSi(25, '°C')) / 2000 - 1)).toBeLessThanOrEqual(0.04);
  });

  // n-Dodecane, Lemmon & Huber (2004) with CoolProp 8.0.0: 2212.3 and 2486.8 J/(kg·K) at 25 and 100 °C. Computed. It is
  // one paraffin and lies above any mixture of Cragoe's, so only the rise is compared: 1 % on each value by its authors.
  test('rises from 25 to 100 °C as that of n-dodecane does', () => {
    const rise = heatCapacity(835, toSi(100, '°C')) / heatCapacity(835, toSi(25, '°C'));
    expect(Math.abs(rise / (2486.8 / 2212.3) - 1)).toBeLessThanOrEqual(0.02);
  });
});

describe('thermal expansion', () => {
  // Table 54B (1980) worked by another program for 840 kg/m³ at 15 °C: 843.77e-6 per °C. Computed, five figures.
  test('of 840 kg/m³ at 15 °C is 843.77e-6 per kelvin', () => {
    expect(Math.abs(expansionAt(840, toSi(15, '°C')) * 1e6 - 843.77)).toBeLessThanOrEqual(0.006);
  });

  // Published coefficients of the edition on a 60 °F base (MPMS 11.1, fuel oils and jet group): α = K0/ρ60² + K1/ρ60 per
  // °F. The two editions were rounded apart from each other and agree to 1e-3.
  test.each([
    { density15: 810, k0: 330.301, k1: 0 },
    { density15: 845, k0: 103.872, k1: 0.2701 },
    { density15: 860, k0: 103.872, k1: 0.2701 },
  ])('of $density15 kg/m³ agrees with the edition for 60 °F', ({ density15, k0, k1 }) => {
    const density60F = density15 * (1 - 0.00046);
    const perKelvin = 1.8 * (k0 / density60F ** 2 + k1 / density60F);
    expect(Math.abs(expansionAt(density15, toSi(60, '°F')) / perKelvin - 1)).toBeLessThanOrEqual(1e-3);
  });
});
