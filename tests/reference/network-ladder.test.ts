import { describe, expect, test } from 'vitest';
import type { Fluid } from '@/lib/hydraulics/elements/element';
import { STANDARD_GRAVITY } from '@/lib/units';
import type { CheckValveFitting, PipeNetwork } from './pipe-network';
import { type Found, solveBoth, solveOurs } from './solve-both';

/*
 * A ladder of networks. Pipes in series, in parallel and in a loop are laminar here and have closed forms, which shows the
 * solver's own error; turbulent ones stand beside EPANET's in passive-network.test.ts. Fittings among turbulent pipes are
 * checked against EPANET (toolkit 2.3.5 in epanet-js 0.9.0, MIT), which has an equivalent for each, see epanet-fitting.ts;
 * the same fittings among orifices have closed forms in tests/unit/hydraulics/solve.test.ts.
 */
const fluid: Fluid = { density: 822, viscosity: 822 * 2.7e-6 };
const OUTLET = 1e5;

describe('laminar networks come out as Kirchhoff’s laws have them', () => {
  // Hagen–Poiseuille: Q = G·Δp with G = π·D⁴ / (128·μ·L), so that a pipe of length 1/g has g times the conductance of one of
  // length 1. Churchill is 64/Re to the last bit up to Re 800 and the solver stops at 3e-11 of the flow: 1e-9.
  const DROP = 1500;
  const BORE = 0.004;
  const UNIT = (Math.PI * BORE ** 4) / (128 * fluid.viscosity);

  function laminar(heights: Record<string, number>, pipes: readonly [string, string, number][]): PipeNetwork {
    const held: Record<string, number> = { in: OUTLET + DROP, out: OUTLET };
    return {
      nodes: Object.entries(heights).map(([id, height]) => {
        const pressure = held[id];
        return { id, height, ...(pressure === undefined ? {} : { pressure }) };
      }),
      pipes: pipes.map(([from, to, conductance]) => {
        return { id: `${from}-${to}`, from, to, bore: BORE, length: 1 / conductance, roughness: 0, minorLoss: 0 };
      }),
    };
  }

  function expectFlow(found: Found, pipe: string, conductanceTimesShare: number) {
    const reynolds = (4 * Math.abs(found.flow(pipe)) * fluid.density) / (Math.PI * BORE * fluid.viscosity);
    expect(reynolds, pipe).toBeLessThan(800);
    expect(found.flow(pipe) / (UNIT * DROP * conductanceTimesShare), pipe).toBeCloseTo(1, 9);
  }

  /** Head above the outlet as a share of the whole drop. */
  function expectHead(found: Found, node: string, height: number, share: number) {
    const head = found.pressure(node) - OUTLET + fluid.density * STANDARD_GRAVITY * height;
    expect(head / DROP, node).toBeCloseTo(share, 9);
  }

  test('in series', () => {
    const found = solveOurs(
      laminar({ in: 0, middle: 0.5, out: 0 }, [
        ['in', 'middle', 1],
        ['middle', 'out', 3],
      ]),
      fluid,
    );
    // Conductances 1 and 3 in series make 3/4; three quarters of the drop stay in the first.
    expectFlow(found, 'in-middle', 3 / 4);
    expectHead(found, 'middle', 0.5, 1 / 4);
  });

  test('in parallel', () => {
    const found = solveOurs(
      laminar({ in: 0, fork: 0, side: 0.3, join: 0, out: 0 }, [
        ['in', 'fork', 3],
        ['fork', 'join', 1],
        ['fork', 'side', 4],
        ['side', 'join', 4],
        ['join', 'out', 3],
      ]),
      fluid,
    );
    // Two fours in series make 2, beside 1 that is 3: three threes in series, a third of the drop each.
    expectFlow(found, 'in-fork', 1);
    expectFlow(found, 'fork-join', 1 / 3);
    expectFlow(found, 'fork-side', 2 / 3);
    expectHead(found, 'side', 0.3, 1 / 2);
  });

  test('in a loop', () => {
    const found = solveOurs(
      laminar({ in: 0, left: 0.4, right: -0.2, out: 0 }, [
        ['in', 'left', 1],
        ['in', 'right', 2],
        ['left', 'out', 3],
        ['right', 'out', 4],
        ['left', 'right', 5],
      ]),
      fluid,
    );
    // 9 l − 5 r = 1 and −5 l + 11 r = 2: l = 21/74, r = 23/74.
    expectHead(found, 'left', 0.4, 21 / 74);
    expectHead(found, 'right', -0.2, 23 / 74);
    expectFlow(found, 'left-right', -10 / 74);
    expectFlow(found, 'right-out', 92 / 74);
  });
});

describe('fittings among turbulent pipes pass as much as in EPANET', () => {
  const pipe = { roughness: 1.5e-6, minorLoss: 0 };
  /**
   * From Re 4000 on the friction factors, Churchill's here and Swamee–Jain's there, differ by 0.2 % at most, flows by half
   * of that; EPANET stops at a change of 1e-5 and lets some 1e-4 of a network's flow past what it has shut.
   */
  const FLOW_SHARE = 0.002;

  function expectSame({ ours, epanet }: { ours: Found; epanet: Found }, { pipes, fittings = [] }: PipeNetwork) {
    for (const { id, bore } of pipes) {
      const reynolds = (4 * Math.abs(ours.flow(id)) * fluid.density) / (Math.PI * bore * fluid.viscosity);
      expect(reynolds, id).toBeGreaterThan(4000);
    }
    for (const { id } of [...pipes, ...fittings]) {
      expect(Math.abs(ours.flow(id) / epanet.flow(id) - 1), id).toBeLessThanOrEqual(FLOW_SHARE);
    }
  }

  /** A tank, a pump, and a line up to where it is wanted. */
  const pumped = (speed: number, outlet = OUTLET): PipeNetwork => ({
    nodes: [
      { id: 'tank', height: 0, pressure: OUTLET },
      { id: 'suction', height: 0 },
      { id: 'delivery', height: 0 },
      { id: 'out', height: 0.5, pressure: outlet },
    ],
    pipes: [
      { ...pipe, id: 'suction-line', from: 'tank', to: 'suction', bore: 0.012, length: 1.5, minorLoss: 1 },
      { ...pipe, id: 'delivery-line', from: 'delivery', to: 'out', bore: 0.01, length: 2 },
    ],
    fittings: [{ kind: 'pump', id: 'pump', from: 'suction', to: 'delivery', freeFlow: 2e-4, deadHead: 120e3, speed }],
  });

  test.each([1, 0.85])('a pump’s curve at %d of its speed', async (speed) => {
    const network = pumped(speed);
    const both = await solveBoth(network, fluid);
    expectSame(both, network);
    // The head that the pump adds, from pressures across its curve: it differs as the flow, over the slope of the curve.
    const head = ({ pressure }: Found) => pressure('delivery') - pressure('suction');
    const slack = FLOW_SHARE * both.ours.flow('pump') * ((120e3 * speed) / 2e-4);
    expect(Math.abs(head(both.ours) - head(both.epanet))).toBeLessThanOrEqual(slack);
  });

  test('a pump asked for more than its dead head stands still', async () => {
    const { ours, epanet } = await solveBoth(pumped(1, OUTLET + 130e3), fluid);
    expect(ours.flow('pump')).toBe(0);
    expect(epanet.flow('pump')).toBe(0);
  });

  const SET = 80e3;
  const OVERRIDE = 1e8;
  const regulated = (set: number): PipeNetwork => ({
    nodes: [
      { id: 'in', height: 0, pressure: OUTLET + 5e5 },
      { id: 'gallery', height: 0 },
      { id: 'out', height: 0, pressure: OUTLET },
    ],
    pipes: [
      { ...pipe, id: 'feed', from: 'in', to: 'gallery', bore: 0.006, length: 3 },
      { ...pipe, id: 'use', from: 'gallery', to: 'out', bore: 0.006, length: 4 },
    ],
    fittings: [{ kind: 'regulator', id: 'regulator', from: 'gallery', to: 'out', set, override: OVERRIDE }],
  });

  test('a regulator that spills', async () => {
    const network = regulated(SET);
    const both = await solveBoth(network, fluid);
    expectSame(both, network);
    const drop = ({ pressure }: Found) => pressure('gallery') - OUTLET;
    const rise = OVERRIDE * both.ours.flow('regulator');
    // The override line by hand, and EPANET's: rounding, and what the spilled flows may differ by.
    expect(drop(both.ours) / (SET + rise)).toBeCloseTo(1, 9);
    expect(Math.abs(drop(both.ours) - drop(both.epanet))).toBeLessThanOrEqual(FLOW_SHARE * rise);
  });

  test('a regulator that stays shut', async () => {
    const { ours, epanet } = await solveBoth(regulated(450e3), fluid);
    expect(ours.flow('regulator')).toBe(0);
    expect(epanet.flow('regulator')).toBe(0);
    expect(Math.abs(ours.flow('use') / epanet.flow('use') - 1)).toBeLessThanOrEqual(FLOW_SHARE);
  });

  const valve: CheckValveFitting = {
    kind: 'check-valve',
    crack: 5e3,
    area: 40e-6,
    flowCoefficient: 0.65,
    seatLeakArea: 1e-9,
  };
  /** Two supplies, each behind its check valve, into one gallery. */
  const supplied: PipeNetwork = {
    nodes: [
      { id: 'strong', height: 0, pressure: OUTLET + 2e5 },
      { id: 'weak', height: 0, pressure: OUTLET + 0.6e5 },
      { id: 'gallery', height: 0 },
      { id: 'out', height: 0, pressure: OUTLET },
    ],
    pipes: [{ ...pipe, id: 'use', from: 'gallery', to: 'out', bore: 0.009, length: 2 }],
    fittings: [
      { ...valve, id: 'open', from: 'strong', to: 'gallery' },
      { ...valve, id: 'shut', from: 'weak', to: 'gallery' },
    ],
  };

  test('a check valve that a stronger supply shuts', async () => {
    const { ours, epanet } = await solveBoth(supplied, fluid);
    for (const id of ['use', 'open']) {
      expect(Math.abs(ours.flow(id) / epanet.flow(id) - 1), id).toBeLessThanOrEqual(FLOW_SHARE);
    }
    // EPANET's seats do not leak. Ours does as an orifice, Q = K·A·√(2Δp/ρ); its smoothing is (100 Pa/Δp)²/4 off, 2e-6.
    expect(epanet.flow('shut')).toBe(0);
    const drop = ours.pressure('gallery') - ours.pressure('weak');
    const leak = valve.flowCoefficient * valve.seatLeakArea * Math.sqrt((2 * drop) / fluid.density);
    expect(drop).toBeGreaterThan(3e4);
    expect(ours.flow('shut') / -leak).toBeCloseTo(1, 5);
  });

  test('two check valves that share the work', async () => {
    const strong = supplied.nodes.map((node) => (node.id === 'weak' ? { ...node, pressure: OUTLET + 1.8e5 } : node));
    const network = { ...supplied, nodes: strong };
    expectSame(await solveBoth(network, fluid), network);
  });
});
