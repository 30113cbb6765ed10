import { type Metre, type Pascal, STANDARD_GRAVITY } from '../../units';
import type { Fluid, Law } from './element';
import { LossCurve } from './loss-curve';

export interface Pipe {
  bore: Metre;
  length: Metre;
  roughness: Metre;
  /** Sum of minor-loss coefficients of bends and fittings. */
  minorLoss: number;
  /** Outlet above inlet. */
  rise: Metre;
}

/**
 * Flow through a pipe at given end pressures: Darcy–Weisbach with Churchill's friction, minor losses and height.
 *
 * Δp − ρ·g·rise = (f·L/D + K)·ρV²/2, solved for V. Strictly increasing and smooth, laminar at no flow. In the
 * Reynolds number it reads (f·L/D + K)·Re² = 2ρD²·Δp/μ², the form solved here. Range: full pipe, incompressible flow,
 * length at least several bores.
 *
 * @source Darcy–Weisbach as in Crane TP-410; friction as in friction.ts.
 */
export function pipeLaw(pipe: Pipe, { density, viscosity }: Fluid): Law {
  const weight: Pascal = density * STANDARD_GRAVITY * pipe.rise;
  const lossPerPascal = (2 * density * pipe.bore * pipe.bore) / (viscosity * viscosity);
  const flowPerReynolds = (Math.PI * pipe.bore * viscosity) / (4 * density);
  const slopePerSlope = flowPerReynolds * lossPerPascal;
  const curve = new LossCurve({
    slenderness: pipe.length / pipe.bore,
    minorLoss: pipe.minorLoss,
    relativeRoughness: pipe.roughness / pipe.bore,
  });
  return (inlet, outlet, result) => {
    const drop = inlet - outlet - weight;
    const flow = flowPerReynolds * curve.follow(Math.abs(drop) * lossPerPascal);
    const slope = slopePerSlope * curve.slope;
    result.flow = drop < 0 ? -flow : flow;
    result.perInlet = slope;
    result.perOutlet = -slope;
  };
}
