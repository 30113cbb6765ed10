import type { Fluid } from '@/lib/hydraulics/elements/element';
import { solve } from '@/lib/hydraulics/solve';
import { EpanetNetwork } from './epanet-network';
import { networkOf, type PipeNetwork } from './pipe-network';

/** What one solver found: m³/s by branch, absolute Pa by node. */
export interface Found {
  flow(branch: string): number;
  pressure(node: string): number;
}

/** The network solved by us, from one pressure everywhere. */
export function solveOurs(network: PipeNetwork, fluid: Fluid): Found {
  const bound = networkOf(network, fluid);
  const held = bound.fixed.filter((pressure) => pressure !== undefined);
  const middle = held.reduce((sum, pressure) => sum + pressure, 0) / held.length;
  const { flows, pressures } = solve(bound, { start: Float64Array.from(bound.nodes, () => middle) });
  return {
    flow: (branch) => flows[bound.branches.findIndex(({ id }) => id === branch)] ?? Number.NaN,
    pressure: (node) => pressures[bound.nodes.indexOf(node)] ?? Number.NaN,
  };
}

/** The network solved by us and by EPANET, which starts from its own flows. */
export async function solveBoth(network: PipeNetwork, fluid: Fluid): Promise<{ ours: Found; epanet: Found }> {
  const epanet = await EpanetNetwork.open(network, fluid);
  epanet.solve();
  const ids = [...network.pipes, ...(network.fittings ?? [])].map(({ id }) => id);
  const flows = new Map(epanet.flows().map((flow, at) => [ids[at], flow]));
  const pressures = new Map(network.nodes.map(({ id }) => [id, epanet.pressureAt(id)]));
  epanet.close();
  return {
    ours: solveOurs(network, fluid),
    epanet: {
      flow: (branch) => flows.get(branch) ?? Number.NaN,
      pressure: (node) => pressures.get(node) ?? Number.NaN,
    },
  };
}
