import { expect, test } from 'vitest';
import { gasStore, linearStore, liquidStore, type Store, sumOfStores } from '@/lib/hydraulics/store';

const ambient = 1e5;

function at(store: Store, pressure: number) {
  const result = { volume: Number.NaN, perPressure: Number.NaN };
  store(pressure, result);
  return result;
}

const rail = liquidStore({ volume: 100e-6, modulus: 1.4e9, ambient });

test('liquid is as stiff as its modulus, which rises by 10 for each pascal', () => {
  for (const above of [0, 1e6, 100e6, 200e6]) {
    const { volume, perPressure } = at(rail, ambient + above);
    // K = ρ dp/dρ: what is there over how it grows.
    expect((100e-6 + volume) / perPressure / (1.4e9 + 10 * above)).toBeCloseTo(1, 12);
  }
});

// By hand: (1 + 10·100 MPa/1.4 GPa)^0.1 = (12/7)^0.1; ln(12/7) = 0.538997, a tenth of it 0.0538997, e^0.0538997 = 1.055379.
test('liquid at 100 MPa is 5.5379 % denser', () => {
  expect(at(rail, ambient + 100e6).volume / 100e-6).toBeCloseTo(0.055379, 6);
});

test('liquid holds nothing more at ambient pressure, to the last digit of a few pascals', () => {
  expect(at(rail, ambient).volume).toBe(0);
  expect(at(rail, ambient + 10).volume / ((100e-6 * 10) / 1.4e9)).toBeCloseTo(1, 7);
  expect(at(rail, ambient - 10).volume / ((-100e-6 * 10) / 1.4e9)).toBeCloseTo(1, 12);
});

test('a gas pocket at twice the pressure has half its volume, or 2^(1/1.4) of it where no heat flows', () => {
  const pocket = (polytropic: number) => gasStore({ gas: 1e-3, ambient, polytropic });
  expect(at(pocket(1), 2 * ambient).volume).toBeCloseTo(0.5e-3, 12);
  expect(at(pocket(1.4), 2 * ambient).volume).toBeCloseTo(1e-3 * (1 - 2 ** (-1 / 1.4)), 12);
  // dS/dp = V_gas/(n p) at ambient pressure.
  expect((at(pocket(1.4), ambient).perPressure * 1.4 * ambient) / 1e-3).toBeCloseTo(1, 12);
  expect(at(pocket(1), ambient).volume).toBe(0);
});

test('below 1 kPa a gas pocket grows along its tangent', () => {
  const pocket = gasStore({ gas: 1e-3, ambient, polytropic: 1 });
  const bound = at(pocket, 1000);
  expect(bound.volume / (1e-3 * (1 - 100))).toBeCloseTo(1, 12);
  const below = at(pocket, -500);
  expect(below.perPressure).toBe(bound.perPressure);
  expect(below.volume / (bound.volume - 1500 * bound.perPressure)).toBeCloseTo(1, 12);
});

test('stores on one node add up', () => {
  const gas = gasStore({ gas: 1e-6, ambient, polytropic: 1 });
  const both = at(sumOfStores(rail, gas, linearStore(1e-12)), 3e5);
  expect(both.volume).toBeCloseTo(at(rail, 3e5).volume + at(gas, 3e5).volume + 3e-7, 18);
  expect(both.perPressure).toBeCloseTo(at(rail, 3e5).perPressure + at(gas, 3e5).perPressure + 1e-12, 20);
});
