import { describe, expect, test } from 'vitest';
import { checkValveLaw } from '@/lib/hydraulics/elements/check-valve';
import type { Law } from '@/lib/hydraulics/elements/element';
import { liftPumpLaw } from '@/lib/hydraulics/elements/lift-pump';
import { pressureRegulatorLaw } from '@/lib/hydraulics/elements/pressure-regulator';
import type { Network } from '@/lib/hydraulics/network';
import { solve } from '@/lib/hydraulics/solve';
import { aNetwork, bridge, DENSITY, flatStart, HIGH, LOW, orifice, orificeFlow } from './tiny-network';

const fluid = { density: DENSITY, viscosity: 2e-3 };

/** Smoothing near no flow puts a flow at Δp off by (100/Δp)²/4 of itself: 3e-6 at the least drop here, 3e4 Pa. */
const DIGITS = 5;

function solved(network: Network) {
  const { pressures, flows } = solve(network, { start: flatStart(network) });
  const at = (name: string) => (pressures[network.nodes.indexOf(name)] ?? Number.NaN) / 1e5;
  return { at, flows };
}

function expectFlow(flow: number | undefined, expected: number) {
  expect((flow ?? Number.NaN) / expected).toBeCloseTo(1, DIGITS);
}

describe('a ladder of small networks', () => {
  test('one orifice between held pressures passes what its law says', () => {
    const { flows } = solved(aNetwork({ in: HIGH, out: LOW }, [['in', 'out', orifice(2)]]));
    expectFlow(flows[0], orificeFlow(2, 4e5));
  });

  test('two orifices in series share the drop as the squares of their areas', () => {
    const network = aNetwork({ in: HIGH, middle: undefined, out: LOW }, [
      ['in', 'middle', orifice(1)],
      ['middle', 'out', orifice(2)],
    ]);
    // The same flow through half the area takes four times the drop: 3.2 and 0.8 bar of 4.
    expect(solved(network).at('middle')).toBeCloseTo(1.8, DIGITS);
  });

  test('two orifices in parallel pass as much as one of their summed area', () => {
    const network = aNetwork({ in: HIGH, middle: undefined, out: LOW }, [
      ['in', 'middle', orifice(1)],
      ['in', 'middle', orifice(2)],
      ['middle', 'out', orifice(3)],
    ]);
    const { at, flows } = solved(network);
    expect(at('middle')).toBeCloseTo(3, DIGITS);
    expectFlow(flows[0], orificeFlow(1, 2e5));
    expectFlow(flows[1], orificeFlow(2, 2e5));
  });

  test('nothing crosses the bridge of a balanced loop', () => {
    const { at, flows } = solved(bridge(1, 2, 2, 4));
    expect(at('left')).toBeCloseTo(at('right'), DIGITS);
    expect(Math.abs(flows[4] ?? 1)).toBeLessThan(1e-9);
  });

  test('an unbalanced loop sends flow across its bridge to the side that drains better', () => {
    const { at, flows } = solved(bridge(2, 1, 1, 2));
    expect(at('left')).toBeGreaterThan(at('right'));
    expect(flows[4]).toBeGreaterThan(0);
    expectFlow(flows[4], (flows[0] ?? 0) - (flows[2] ?? 0));
  });

  test('a pump meets a restriction where its curve crosses it', () => {
    const network = aNetwork({ in: LOW, middle: undefined, out: LOW }, [
      ['in', 'middle', liftPumpLaw({ freeFlow: 1e-4, deadHead: 1e5, speed: 1, vapourPressure: 0 })],
      ['middle', 'out', orifice(5)],
    ]);
    // Q = Q₀(1 − Δp/H) and Q = k√Δp: with y = √(Δp/H) a quadratic, y² + (k√H/Q₀) y − 1 = 0.
    const ratio = orificeFlow(5, 1e5) / 1e-4;
    const y = (-ratio + Math.sqrt(ratio ** 2 + 4)) / 2;
    expectFlow(solved(network).flows[0], 1e-4 * (1 - y ** 2));
  });

  test('a regulator spills what the set pressure does not need', () => {
    const regulator = pressureRegulatorLaw(
      { set: 2e5, override: 1e8, openArea: 0, flowCoefficient: 0.65, corner: 1e3 },
      fluid,
    );
    const network = aNetwork({ in: HIGH, middle: undefined, out: LOW }, [
      ['in', 'middle', orifice(4)],
      ['middle', 'out', regulator],
    ]);
    const { at, flows } = solved(network);
    const [through, spilled] = [flows[0] ?? 0, flows[1] ?? 0];
    expectFlow(spilled, through);
    // Set pressure plus the override for what it passes.
    expect(at('middle')).toBeCloseTo((LOW + 2e5 + 1e8 * spilled) / 1e5, DIGITS);
  });

  test('a shut check valve passes its seat’s leak and no more', () => {
    const valve = checkValveLaw({ crack: 2e3, area: 50e-6, flowCoefficient: 0.65, seatLeakArea: 2e-9 }, fluid);
    const network = aNetwork({ in: LOW, middle: undefined, out: HIGH }, [
      ['in', 'middle', valve],
      ['middle', 'out', orifice(10)],
    ]);
    const { at, flows } = solved(network);
    const seat = 0.65 * 2e-9 * Math.sqrt((2 * 4e5) / DENSITY);
    // The seat's leak costs the large orifice a pascal or two of the five bar.
    expect(at('middle')).toBeCloseTo(5, 4);
    expectFlow(flows[0], -seat);
  });

  test('an open check valve costs its crack pressure and its orifice', () => {
    const valve = checkValveLaw({ crack: 2e3, area: 50e-6, flowCoefficient: 0.62, seatLeakArea: 1e-12 }, fluid);
    const network = aNetwork({ in: HIGH, middle: undefined, out: LOW }, [
      ['in', 'middle', orifice(50)],
      ['middle', 'out', valve],
    ]);
    // Equal areas and equal flow: what is left after the crack pressure is shared evenly.
    expect(solved(network).at('middle')).toBeCloseTo(5 - (4 - 0.02) / 2, 5);
  });

  test('a start far from the answer changes nothing', () => {
    const network = bridge(2, 1, 1, 2);
    const far = solve(network, { start: flatStart(network, 9e6) });
    const near = solve(network, { start: flatStart(network) });
    far.pressures.forEach((pressure, node) => {
      expect(pressure / (near.pressures[node] ?? Number.NaN)).toBeCloseTo(1, 9);
    });
  });
});

describe('holding a node', () => {
  const network = aNetwork({ in: HIGH, middle: undefined, out: LOW }, [
    ['in', 'middle', valveOf((demand) => demand)],
    ['middle', 'out', orifice(1)],
  ]);

  test('finds the demand that balances it', () => {
    const { demand, pressures } = solve(network, {
      start: flatStart(network),
      demand: 0.3,
      held: { node: 1, pressure: 2e5 },
    });
    // 1 bar over 1 mm² against 3 bar over 2 mm² · demand.
    expect(demand).toBeCloseTo(1 / (2 * Math.sqrt(3)), DIGITS);
    expect(pressures[1]).toBe(2e5);
  });
});

/** An orifice of 2 mm² opened by some function of the demand. */
function valveOf(opening: (demand: number) => number): Law {
  const full = orifice(2);
  return (inlet, outlet, result, demand) => {
    full(inlet, outlet, result, demand);
    const open = opening(demand);
    result.perDemand = result.flow;
    result.flow *= open;
    result.perInlet *= open;
    result.perOutlet *= open;
  };
}
