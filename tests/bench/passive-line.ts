import type { Fluid } from '@/lib/hydraulics/elements/element';
import type { Solution } from '@/lib/hydraulics/network';
import { solve } from '@/lib/hydraulics/solve';
import { randomStream } from '@/lib/random';
import { STANDARD_GRAVITY } from '@/lib/units';
import { EpanetNetwork } from '../reference/epanet-network';
import { networkOf, type PipeNetwork, twelvePipeLine } from '../reference/pipe-network';

/** Per solve, from a cold start. Ratios are ours over EPANET's. */
export interface PassiveLineFigures {
  oursMicroseconds: number;
  epanetMicroseconds: number;
  ratio: number;
  median: { oursMicroseconds: number; epanetMicroseconds: number; ratio: number };
}

const fluid: Fluid = { density: 822, viscosity: 822 * 2.7e-6 };
const OUTLET = 1e5;
const ROUNDS = 30;
const SOLVES = 500;

/**
 * Times a line of twelve pipes, solved by us and by EPANET in the same process on the same heads. Rounds alternate, so
 * that whatever else the machine does hits both; each solve has a new inlet pressure and starts cold. Both networks are
 * held open: laws bound here, resistances prepared there.
 *
 * @param span  Inlet above outlet, from…to. The default runs from laminar flow (Re 200) to fully turbulent (Re 4e4).
 */
export async function measurePassiveLine(span: [number, number] = [500, 600e3]): Promise<PassiveLineFigures> {
  const network = twelvePipeLine(OUTLET + span[1], OUTLET);
  const epanet = await EpanetNetwork.open(network, fluid);
  const random = randomStream('passive-line', 'inlet pressures');
  const times = { ours: [] as number[], epanet: [] as number[] };
  const ours = ourSolver(network);
  for (const drop of span) assertSameFlow(OUTLET + drop, ours, epanet);
  for (let round = -3; round < ROUNDS; round++) {
    const inlets = Float64Array.from({ length: SOLVES }, () => OUTLET + span[0] * (span[1] / span[0]) ** random.next());
    const ourTime = timed(inlets, ours);
    const epanetTime = timed(inlets, (inlet) => {
      epanet.hold('n0', inlet);
      epanet.solve();
    });
    // The first rounds warm both up.
    if (round < 0) continue;
    times.ours.push(ourTime);
    times.epanet.push(epanetTime);
  }
  epanet.close();
  return { ...figures(times, (sorted) => sorted[0]), median: figures(times, (sorted) => sorted[ROUNDS / 2]) };
}

/** A race counts only if both run it: at either end of the span, laminar and turbulent, they must find the same flow. */
function assertSameFlow(inlet: number, ours: (inlet: number) => Solution, epanet: EpanetNetwork): void {
  epanet.hold('n0', inlet);
  epanet.solve();
  const [flow, theirs] = [ours(inlet).flows[0] ?? Number.NaN, epanet.flows()[0] ?? Number.NaN];
  if (!(Math.abs(flow / theirs - 1) < 0.002)) throw new Error(`At ${inlet} Pa we find ${flow} m³/s, EPANET ${theirs}`);
}

function ourSolver(network: PipeNetwork): (inlet: number) => Solution {
  const bound = networkOf(network, fluid);
  const fixed = [...bound.fixed];
  const held = { ...bound, fixed };
  const start = new Float64Array(fixed.length);
  const columns = Float64Array.from(network.nodes, ({ height }) => fluid.density * STANDARD_GRAVITY * height);
  return (inlet) => {
    fixed[0] = inlet;
    // A cold start knows no more than the heads at the two ends: an even fall from node to node. EPANET starts from its
    // own guess of flows.
    for (let node = 0; node < start.length; node++) {
      start[node] = inlet + ((OUTLET - inlet) * node) / (start.length - 1) - (columns[node] as number);
    }
    return solve(held, { start });
  };
}

/** Microseconds per solve. */
function timed(inlets: Float64Array, solveAt: (inlet: number) => unknown): number {
  const start = performance.now();
  for (const inlet of inlets) solveAt(inlet);
  return ((performance.now() - start) * 1e3) / inlets.length;
}

function figures(times: Record<'ours' | 'epanet', number[]>, pick: (sorted: number[]) => number | undefined) {
  const of = (values: number[]) => pick([...values].sort((a, b) => a - b)) ?? Number.NaN;
  const [oursMicroseconds, epanetMicroseconds] = [of(times.ours), of(times.epanet)];
  return { oursMicroseconds, epanetMicroseconds, ratio: oursMicroseconds / epanetMicroseconds };
}
