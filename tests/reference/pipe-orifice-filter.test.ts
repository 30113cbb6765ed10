import { describe, expect, test } from 'vitest';
import { fitFuel, fuelState } from '@/lib/fluids/fuel-state';
import type { Fluid, Law } from '@/lib/hydraulics/elements/element';
import { filterLaw } from '@/lib/hydraulics/elements/filter';
import { frictionFactor } from '@/lib/hydraulics/elements/friction';
import { orificeLaw } from '@/lib/hydraulics/elements/orifice';
import { type Pipe, pipeLaw } from '@/lib/hydraulics/elements/pipe';
import { STANDARD_GRAVITY, toSi } from '@/lib/units';

const GALLON_US = 3.785411784e-3;
const INCH = 0.0254;
const FOOT = 0.3048;
const POUND_PER_CUBIC_FOOT = 0.45359237 / FOOT ** 3;
const degrees = (angle: number) => (angle * Math.PI) / 180;

function flowOf(law: Law, drop: number): number {
  const result = { flow: 0, perInlet: 0, perOutlet: 0, perDemand: 0 };
  law(1e5 + drop, 1e5, result, 0);
  return result.flow;
}

/** The drop at which the law passes this flow, by bisection. */
function dropOf(law: Law, flow: number): number {
  let [low, high] = [0, 1e9];
  for (let step = 0; step < 80; step++) {
    const middle = (low + high) / 2;
    if (flowOf(law, middle) < flow) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

describe('laminar pipe', () => {
  // Cengel & Cimbala, Fluid Mechanics, example 8-1: oil 888 kg/m³, 0.800 Pa·s, 50 mm × 40 m, 745 to 97 kPa. The
  // horizontal flow was seen in print; the inclined ones are quoted from memory and agree with the closed form.
  // Three figures printed: ±0.5 %.
  test.each([
    { angle: 0, printed: 3.11e-3 },
    { angle: 15, printed: 2.67e-3 },
    { angle: -15, printed: 3.54e-3 },
  ])('oil in a pipe inclined by $angle° passes $printed m³/s', ({ angle, printed }) => {
    const rise = 40 * Math.sin(degrees(angle));
    const pipe: Pipe = { bore: 0.05, length: 40, roughness: 0, minorLoss: 0, rise };
    const law = pipeLaw(pipe, { density: 888, viscosity: 0.8 });
    expect(Math.abs(flowOf(law, 648e3) / printed - 1)).toBeLessThanOrEqual(0.005);
  });

  // Analytic: Hagen–Poiseuille, Q = π·D⁴·Δp / (128·μ·L). Re 130, where Churchill is 64/Re to the last bit.
  test('Hagen–Poiseuille comes out exactly, and half the bore passes a sixteenth', () => {
    const fluid: Fluid = { density: 830, viscosity: 3e-3 };
    const at = (bore: number) => flowOf(pipeLaw({ bore, length: 2, roughness: 0, minorLoss: 0, rise: 0 }, fluid), 50);
    const poiseuille = (Math.PI * 0.008 ** 4 * 50) / (128 * 3e-3 * 2);
    expect(at(0.008) / poiseuille).toBeCloseTo(1, 12);
    expect(at(0.008) / at(0.004)).toBeCloseTo(16, 10);
  });
});

describe('turbulent pipe', () => {
  // White, Fluid Mechanics, example 6.7: oil 900 kg/m³, 1e-5 m²/s, 0.2 m³/s, 500 m of 200 mm cast iron, ε 0.26 mm.
  // Prints Re 128 000 and f 0.0225 (seen), head loss 117 m (from memory). Chart reading: ±2 %.
  test('White 6.7 loses 117 m of head', () => {
    const pipe: Pipe = { bore: 0.2, length: 500, roughness: 0.26e-3, minorLoss: 0, rise: 0 };
    const head = dropOf(pipeLaw(pipe, { density: 900, viscosity: 900 * 1e-5 }), 0.2) / (900 * STANDARD_GRAVITY);
    const reynolds = (4 * 0.2) / (Math.PI * 0.2 * 1e-5);
    expect(reynolds).toBeCloseTo(127_324, 0);
    expect(Math.abs(frictionFactor(reynolds, 0.0013) / 0.0225 - 1)).toBeLessThanOrEqual(0.02);
    expect(Math.abs(head / 117 - 1)).toBeLessThanOrEqual(0.02);
  });

  // The same pipe sloping 10° down: pressure drop 265 kPa (from memory; the difference of two numbers three times as
  // large, each to 2 %, so ±6 %; Colebrook gives 269.5).
  test('White 6.7 drops 265 kPa on its slope', () => {
    const rise = -500 * Math.sin(degrees(10));
    const law = pipeLaw(
      { bore: 0.2, length: 500, roughness: 0.26e-3, minorLoss: 0, rise },
      { density: 900, viscosity: 9e-3 },
    );
    expect(Math.abs(dropOf(law, 0.2) / 265e3 - 1)).toBeLessThanOrEqual(0.06);
  });

  // Crane TP-410, example 7-13 (seen in the public notebook of solved problems): fuel oil 0.815, 2.7 cSt, 100 ft of
  // 2 in schedule 40 (2.067 in bore), 2 US gal/s; prints f 0.0230, 9.65 psi. Chart reading: ±2 %.
  test('Crane 7-13 drops 9.65 psi', () => {
    const pipe: Pipe = { bore: 2.067 * INCH, length: 100 * FOOT, roughness: 0.00015 * FOOT, minorLoss: 0, rise: 0 };
    const drop = dropOf(pipeLaw(pipe, { density: 815, viscosity: 815 * 2.7e-6 }), 2 * GALLON_US);
    expect(Math.abs(drop / toSi(9.65, 'psi') - 1)).toBeLessThanOrEqual(0.02);
  });

  // Crane TP-410, example 7-1 (seen): 200 L/min of water at 30 °C in 50 mm plastic pipe; prints f 0.0179. Chart: ±2 %.
  test('Crane 7-1 has a friction factor of 0.0179', () => {
    expect(Math.abs(frictionFactor(100_600, 0) / 0.0179 - 1)).toBeLessThanOrEqual(0.02);
  });

  // Cengel & Cimbala, example 8-3: water 999 kg/m³, 1.138e-3 Pa·s, 50 mm × 60 m, ε 2 µm, 6 L/s. Prints f 0.0172 and
  // 9.81 m (from memory; inputs seen). Colebrook there, Churchill here: ±1.5 %.
  test('Cengel 8-3 loses 9.81 m of head', () => {
    const pipe: Pipe = { bore: 0.05, length: 60, roughness: 2e-6, minorLoss: 0, rise: 0 };
    const head = dropOf(pipeLaw(pipe, { density: 999, viscosity: 1.138e-3 }), 6e-3) / (999 * STANDARD_GRAVITY);
    expect(Math.abs(head / 9.81 - 1)).toBeLessThanOrEqual(0.015);
  });

  // Analytic: with minor losses alone left, Δp = K·ρV²/2. The stub's own friction is less than 1e-3 of it.
  test('minor losses add K velocity heads', () => {
    const pipe: Pipe = { bore: 0.01, length: 0.01, roughness: 0, minorLoss: 50, rise: 0 };
    const velocity = 3;
    const drop = dropOf(pipeLaw(pipe, { density: 830, viscosity: 2e-3 }), (Math.PI / 4) * 0.01 ** 2 * velocity);
    expect(Math.abs(drop / ((50 * 830 * velocity ** 2) / 2) - 1)).toBeLessThanOrEqual(1e-3);
  });
});

describe('orifice', () => {
  // Crane TP-410, example 7-23 (seen in the public notebook): 2 in orifice in 4 in schedule 40 pipe, water
  // 62.364 lb/ft³, 4.4 inHg on a manometer with water above the mercury; prints coefficient 0.625 and 106 gal/min.
  // Three figures: ±0.5 gal/min.
  test('Crane 7-23 passes 106 gallons a minute', () => {
    const density = 62.364 * POUND_PER_CUBIC_FOOT;
    const drop = 4.4 * (toSi(1, 'inHg') - density * STANDARD_GRAVITY * INCH);
    const law = orificeLaw({ area: (Math.PI / 4) * (2 * INCH) ** 2, flowCoefficient: 0.625 }, density);
    expect(Math.abs((flowOf(law, drop) / GALLON_US) * 60 - 106)).toBeLessThanOrEqual(0.5);
  });

  // Analytic: Q = K·A·√(2Δp/ρ). The smoothing leaves out (δ/Δp)²/4: 2.5e-5 at 10 kPa.
  test('the root law holds from a few kilopascals on', () => {
    const law = orificeLaw({ area: 4e-6, flowCoefficient: 0.7 }, 830);
    const expected = 0.7 * 4e-6 * Math.sqrt((2 * 10e3) / 830);
    expect(Math.abs(flowOf(law, 10e3) / expected - 1)).toBeLessThanOrEqual(2.6e-5);
  });
});

describe('filter', () => {
  // Analytic: Δp = μ·R·Q + (ρ/2)·(Q/(K·A))².
  test('the drop is a laminar and a turbulent part in series', () => {
    const filter = { resistance: 2e12, housingArea: 60e-6, flowCoefficient: 0.7 };
    const flow = 5e-5;
    const expected = 2.2e-3 * 2e12 * flow + (830 / 2) * (flow / (0.7 * 60e-6)) ** 2;
    expect(flowOf(filterLaw(filter, { density: 830, viscosity: 2.2e-3 }), expected) / flow).toBeCloseTo(1, 12);
  });

  // Computed: Darcy's law with the viscosities and densities of a mid-range fuel (D341, D1250) makes the drop at −10 °C
  // 4.1 times that at 40 °C for the same flow; two figures given.
  test('cold fuel drops about four times as much pressure in the same medium', () => {
    const fuel = fitFuel({
      id: 'mid-range',
      density15: 840,
      viscosity40: 2.7,
      viscosity100: 1.13,
      source: { kind: 'assumed', because: 'the design curve of the check values' },
      text: { en: 'mid-range fuel' },
    });
    const filter = { resistance: 2e12, housingArea: 1, flowCoefficient: 1 };
    const at = (celsius: number) => dropOf(filterLaw(filter, fuelState(fuel, toSi(celsius, '°C'))), 3e-5);
    expect(Math.abs(at(-10) / at(40) - 4.1)).toBeLessThanOrEqual(0.05);
  });
});
