import type { SquareMetre } from '../../units';
import type { Fluid, Law } from './element';

export interface Filter {
  /** Darcy resistance of the medium with its plugging, drop / (viscosity × flow), 1/m³. */
  resistance: number;
  housingArea: SquareMetre;
  flowCoefficient: number;
}

/**
 * Flow through a filter: the medium, laminar, in series with the passages of its housing, turbulent.
 *
 * Δp = μ·R·Q + (ρ/2)·(Q / (K·A))², odd in Q, solved for Q in closed form. Range: creeping flow in the medium (pore
 * Reynolds number below about 1), which fuel filters keep.
 *
 * @source Darcy's law for the medium; Crane TP-410, orifice equation for the housing.
 */
export function filterLaw({ resistance, housingArea, flowCoefficient }: Filter, fluid: Fluid): Law {
  const linear = fluid.viscosity * resistance;
  const quadratic = fluid.density / (2 * (flowCoefficient * housingArea) ** 2);
  return (inlet, outlet, result) => {
    const drop = inlet - outlet;
    const root = Math.sqrt(linear * linear + 4 * quadratic * Math.abs(drop));
    result.flow = (2 * drop) / (linear + root);
    result.perInlet = 1 / root;
    result.perOutlet = -1 / root;
  };
}
