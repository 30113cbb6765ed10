import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FlowAndSlopes, Fluid, Law } from '@/lib/hydraulics/elements/element';
import { filterLaw } from '@/lib/hydraulics/elements/filter';
import { frictionAt, frictionFactor, LAMINAR_REYNOLDS, viscousTerm } from '@/lib/hydraulics/elements/friction';
import { orificeLaw } from '@/lib/hydraulics/elements/orifice';
import { type Pipe, pipeLaw } from '@/lib/hydraulics/elements/pipe';
import { regularRoot, regularRootSlope } from '@/lib/hydraulics/regular-root';
import { STANDARD_GRAVITY } from '@/lib/units';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Spread evenly over the decades. */
const spread = (min: number, max: number) => between(Math.log(min), Math.log(max)).map(Math.exp);
const signed = (size: fc.Arbitrary<number>) => fc.tuple(size, fc.boolean()).map(([x, negative]) => (negative ? -x : x));

/** Diesel from a cold morning to the return line. */
const fluids: fc.Arbitrary<Fluid> = fc.record({ density: between(770, 870), viscosity: spread(6e-4, 3e-2) });
const pipes: fc.Arbitrary<Pipe> = fc.record({
  bore: spread(2e-3, 2e-2),
  length: spread(0.05, 10),
  roughness: fc.oneof(fc.constant(0), spread(1e-7, 1e-4)),
  minorLoss: fc.oneof(fc.constant(0), spread(0.1, 50)),
  rise: fc.constant(0),
});
const drops = signed(spread(1e-3, 1e7));

function at(law: Law, drop: number): FlowAndSlopes {
  const result = { flow: 0, perInlet: 0, perOutlet: 0, perDemand: 0 };
  law(drop, 0, result, 0);
  return result;
}

const laws: [string, fc.Arbitrary<Law>][] = [
  ['pipe', fc.tuple(pipes, fluids).map(([pipe, fluid]) => pipeLaw(pipe, fluid))],
  [
    'orifice',
    fc
      .tuple(spread(1e-8, 1e-4), between(0.5, 1), fluids)
      .map(([area, flowCoefficient, { density }]) => orificeLaw({ area, flowCoefficient }, density)),
  ],
  [
    'filter',
    fc
      .tuple(spread(1e10, 1e14), spread(1e-6, 1e-3), between(0.5, 1), fluids)
      .map(([resistance, housingArea, flowCoefficient, fluid]) =>
        filterLaw({ resistance, housingArea, flowCoefficient }, fluid),
      ),
  ],
];

describe.each(laws)('%s', (_name, law) => {
  test('flow reverses with the drop, to the bit', () => {
    fc.assert(
      fc.property(law, drops, (law, drop) => {
        const [there, back] = [at(law, drop), at(law, -drop)];
        expect(back.flow).toBe(-there.flow);
        expect(back.perInlet).toBe(there.perInlet);
      }),
    );
  });

  test('flow rises with the drop', () => {
    fc.assert(
      fc.property(law, drops, spread(1e-6, 1), (law, drop, share) => {
        expect(at(law, drop + Math.abs(drop) * share).flow).toBeGreaterThan(at(law, drop).flow);
      }),
    );
  });

  test('slopes are the derivatives of flow', () => {
    fc.assert(
      fc.property(law, drops, (law, drop) => {
        const { perInlet, perOutlet } = at(law, drop);
        // Fourth-order differences; rounding over h is 1e-11. Where two cubics of the pipe's curve meet, its bending
        // jumps a little, which a difference across the joint feels: 3e-7 at most in 100 000 pipes.
        const h = 1e-4 * Math.abs(drop);
        const difference = (step: number) => at(law, drop + step).flow - at(law, drop - step).flow;
        const numeric = (8 * difference(h) - difference(2 * h)) / (12 * h);
        expect(Math.abs(numeric / perInlet - 1)).toBeLessThanOrEqual(1e-6);
        expect(perOutlet).toBe(-perInlet);
      }),
      { numRuns: 2000 },
    );
  });

  test('no drop, no flow, and a finite slope', () => {
    fc.assert(
      fc.property(law, (law) => {
        const { flow, perInlet } = at(law, 0);
        expect(Math.abs(flow)).toBe(0);
        expect(perInlet).toBeGreaterThan(0);
        expect(Number.isFinite(perInlet)).toBe(true);
      }),
    );
  });
});

describe('pipe', () => {
  test('the drop of the flow it returns is the drop it was given', () => {
    fc.assert(
      fc.property(pipes, fluids, spread(1, 1e7), (pipe, fluid, drop) => {
        const velocity = at(pipeLaw(pipe, fluid), drop).flow / ((Math.PI / 4) * pipe.bore ** 2);
        const reynolds = (fluid.density * velocity * pipe.bore) / fluid.viscosity;
        const factor = frictionFactor(reynolds, pipe.roughness / pipe.bore);
        const losses = (factor * pipe.length) / pipe.bore + pipe.minorLoss;
        // What loss-curve.ts promises (its cubics' error goes with the fourth power of their width), and rounding in
        // laminar flow. Churchill's factor itself is a pipe's to a few per cent.
        const tolerance = reynolds < LAMINAR_REYNOLDS ? 1e-14 : reynolds < 1500 || reynolds > 5000 ? 4e-8 : 4e-5;
        expect(Math.abs((losses * fluid.density * velocity ** 2) / 2 / drop - 1)).toBeLessThanOrEqual(tolerance);
      }),
      { numRuns: 2000 },
    );
  });

  test('what it answered before changes no bit of an answer', () => {
    fc.assert(
      fc.property(pipes, fluids, fc.array(drops, { maxLength: 5 }), drops, (pipe, fluid, others, drop) => {
        const used = pipeLaw(pipe, fluid);
        for (const other of others) at(used, other);
        expect(at(used, drop)).toEqual(at(pipeLaw(pipe, fluid), drop));
      }),
    );
  });

  test('fuel stands still where the drop only carries its weight', () => {
    fc.assert(
      fc.property(pipes, fluids, between(-2, 2), (pipe, fluid, rise) => {
        expect(at(pipeLaw({ ...pipe, rise }, fluid), fluid.density * STANDARD_GRAVITY * rise).flow).toBe(0);
      }),
    );
  });

  test('beyond its curve flow still rises with the drop', () => {
    const law = pipeLaw(
      { bore: 0.1, length: 1, roughness: 0, minorLoss: 0, rise: 0 },
      { density: 900, viscosity: 1e-5 },
    );
    fc.assert(
      fc.property(spread(1e9, 1e20), (drop) => {
        const { flow, perInlet } = at(law, drop);
        expect(at(law, drop * 1.001).flow).toBeGreaterThan(flow);
        expect(perInlet).toBeGreaterThan(0);
      }),
    );
  });

  test('pressures that are no number give a flow that is none', () => {
    const law = pipeLaw(
      { bore: 0.01, length: 1, roughness: 0, minorLoss: 0, rise: 0 },
      { density: 830, viscosity: 2e-3 },
    );
    expect(at(law, Number.NaN).flow).toBeNaN();
  });
});

describe('friction', () => {
  const roughnesses = fc.oneof(fc.constant(0), spread(1e-6, 0.05));

  test('the exponent is the logarithmic slope of the factor', () => {
    fc.assert(
      fc.property(spread(900, 1e8), roughnesses, (reynolds, roughness) => {
        const friction = { factor: 0, exponent: 0 };
        frictionAt(reynolds, viscousTerm(reynolds), roughness, friction);
        const h = 1e-4;
        const logarithm = (step: number) => Math.log(frictionFactor(reynolds * Math.exp(step), roughness));
        const difference = (step: number) => logarithm(step) - logarithm(-step);
        // Rounding of the logarithms over h: 1e-11.
        expect(Math.abs((8 * difference(h) - difference(2 * h)) / (12 * h) - friction.exponent)).toBeLessThanOrEqual(
          1e-9,
        );
      }),
    );
  });

  test('the factor does not jump where the turbulent term starts to count', () => {
    fc.assert(
      fc.property(roughnesses, (roughness) => {
        const below = frictionFactor(LAMINAR_REYNOLDS, roughness);
        const above = frictionFactor(LAMINAR_REYNOLDS * (1 + 1e-15), roughness);
        expect(Math.abs(above / below - 1)).toBeLessThanOrEqual(3e-15);
      }),
    );
  });
});

describe('regular root', () => {
  test('is the square root with its sign, far from zero', () => {
    fc.assert(
      fc.property(signed(spread(1e3, 1e9)), (x) => {
        // (w/x)²/4 with w = 1.
        expect(Math.abs(regularRoot(x, 1) / (Math.sign(x) * Math.sqrt(Math.abs(x))) - 1)).toBeLessThanOrEqual(2.6e-7);
      }),
    );
  });

  test('has the slope it says', () => {
    fc.assert(
      fc.property(between(-1e3, 1e3), spread(0.1, 100), (x, width) => {
        const h = 1e-4 * (Math.abs(x) + width);
        const difference = (step: number) => regularRoot(x + step, width) - regularRoot(x - step, width);
        const numeric = (8 * difference(h) - difference(2 * h)) / (12 * h);
        expect(Math.abs(numeric / regularRootSlope(x, width) - 1)).toBeLessThanOrEqual(1e-9);
      }),
    );
  });
});
