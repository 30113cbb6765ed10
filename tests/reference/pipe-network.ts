import { checkValveLaw } from '@/lib/hydraulics/elements/check-valve';
import type { Fluid, Law } from '@/lib/hydraulics/elements/element';
import { type LiftPump, liftPumpLaw } from '@/lib/hydraulics/elements/lift-pump';
import { type Pipe, pipeLaw } from '@/lib/hydraulics/elements/pipe';
import { pressureRegulatorLaw } from '@/lib/hydraulics/elements/pressure-regulator';
import type { Network } from '@/lib/hydraulics/network';
import type { Metre, Pascal, SquareMetre } from '@/lib/units';

/** A network of pipes and a few fittings, as both solvers can be told of it. */
export interface PipeNetwork {
  /** Nodes with a pressure are held at it. */
  nodes: readonly { id: string; height: Metre; pressure?: Pascal }[];
  pipes: readonly (Omit<Pipe, 'rise'> & { id: string; from: string; to: string })[];
  fittings?: readonly Fitting[];
}

/** What may stand between two nodes of the same height. */
export type Fitting = { id: string; from: string; to: string } & (PumpFitting | RegulatorFitting | CheckValveFitting);

export interface PumpFitting extends Omit<LiftPump, 'vapourPressure'> {
  kind: 'pump';
}

/** A spill into a held node. */
export interface RegulatorFitting {
  kind: 'regulator';
  set: Pascal;
  /** Pa/(m³/s) */
  override: number;
}

export interface CheckValveFitting {
  kind: 'check-valve';
  crack: Pascal;
  area: SquareMetre;
  flowCoefficient: number;
  seatLeakArea: SquareMetre;
}

/** The network as our solver takes it: pipes first, then fittings. */
export function networkOf({ nodes, pipes, fittings = [] }: PipeNetwork, fluid: Fluid): Network {
  const index = new Map(nodes.map(({ id }, at) => [id, at]));
  const heightOf = (id: string) => nodes[index.get(id) ?? -1]?.height ?? Number.NaN;
  const branch = (id: string, from: string, to: string, law: Law) => {
    return { id, from: index.get(from) ?? -1, to: index.get(to) ?? -1, law };
  };
  return {
    nodes: nodes.map(({ id }) => id),
    fixed: nodes.map(({ pressure }) => pressure),
    branches: [
      ...pipes.map(({ id, from, to, ...pipe }) =>
        branch(id, from, to, pipeLaw({ ...pipe, rise: heightOf(to) - heightOf(from) }, fluid)),
      ),
      ...fittings.map((fitting) => branch(fitting.id, fitting.from, fitting.to, fittingLaw(fitting, fluid))),
    ],
  };
}

function fittingLaw(fitting: Fitting, fluid: Fluid): Law {
  switch (fitting.kind) {
    case 'pump':
      // So far above vapour pressure a pump fills to 1 − e⁻²⁰.
      return liftPumpLaw({ ...fitting, vapourPressure: 0 });
    case 'regulator':
      return pressureRegulatorLaw({ ...fitting, openArea: 0, flowCoefficient: 1, corner: 1e3 }, fluid);
    case 'check-valve':
      return checkValveLaw(fitting, fluid);
  }
}

/** Twelve lines of a fuel system end to end: bores 6 to 14 mm, lengths 0.2 to 1.6 m, bends here and there. */
export function twelvePipeLine(inlet: Pascal, outlet: Pascal): PipeNetwork {
  const bores = [12, 10, 14, 8, 10, 12, 6, 10, 8, 14, 10, 12];
  const lengths = [1.6, 0.4, 0.8, 0.3, 1.2, 0.5, 0.2, 0.9, 0.6, 1.4, 0.7, 1];
  const minorLosses = [0.5, 0, 1.1, 0, 2, 0.3, 0, 0.9, 1.5, 0, 0.6, 1];
  return {
    nodes: Array.from({ length: 13 }, (_, at) => ({
      id: `n${at}`,
      height: at % 3 === 1 ? 0.2 : 0,
      ...(at === 0 ? { pressure: inlet } : at === 12 ? { pressure: outlet } : {}),
    })),
    pipes: bores.map((bore, at) => ({
      id: `p${at}`,
      from: `n${at}`,
      to: `n${at + 1}`,
      bore: bore * 1e-3,
      length: lengths[at] ?? 1,
      roughness: 1.5e-6,
      minorLoss: minorLosses[at] ?? 0,
    })),
  };
}
