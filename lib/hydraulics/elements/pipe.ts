import { type Metre, type Pascal, STANDARD_GRAVITY } from '../../units';
import type { Fluid, Law } from './element';
import { type Friction, frictionAt, LAMINAR_REYNOLDS } from './friction';

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
  const slenderness = pipe.length / pipe.bore;
  const weight: Pascal = density * STANDARD_GRAVITY * pipe.rise;
  const lossPerPascal = (2 * density * pipe.bore * pipe.bore) / (viscosity * viscosity);
  const flowPerReynolds = (Math.PI * pipe.bore * viscosity) / (4 * density);
  const solveReynolds = reynoldsSolver(slenderness, pipe.minorLoss, pipe.roughness / pipe.bore);
  const state: PipeState = { reynolds: 0, slope: 0 };
  return (inlet, outlet, result) => {
    const drop = inlet - outlet - weight;
    solveReynolds(Math.abs(drop) * lossPerPascal, state);
    const slope = flowPerReynolds * lossPerPascal * state.slope;
    result.flow = flowPerReynolds * (drop < 0 ? -state.reynolds : state.reynolds);
    result.perInlet = slope;
    result.perOutlet = -slope;
  };
}

interface PipeState {
  reynolds: number;
  /** d reynolds / d loss. */
  slope: number;
}

/** Enough for the sharpest bend of the transition; elsewhere two or three suffice. */
const MAX_STEPS = 60;

/**
 * Solves (f(Re)·slenderness + minorLoss)·Re² = loss for Re: Newton on logarithms, in which the equation is nearly
 * straight, kept inside a bracket. It starts from the loss alone, so that the same loss always gives the same bits.
 */
function reynoldsSolver(slenderness: number, minorLoss: number, relativeRoughness: number) {
  const friction: Friction = { factor: 0, exponent: 0 };
  const start = startingReynolds(slenderness, minorLoss, relativeRoughness);
  return (loss: number, state: PipeState): void => {
    const laminarRoot = Math.sqrt((64 * slenderness) ** 2 + 4 * minorLoss * loss);
    let reynolds = (2 * loss) / (64 * slenderness + laminarRoot);
    if (reynolds <= LAMINAR_REYNOLDS) {
      state.reynolds = reynolds;
      state.slope = 1 / laminarRoot;
      return;
    }
    // Churchill's factor lies above 64/Re, so that laminar flow bounds the answer from above.
    let high = reynolds;
    let low = LAMINAR_REYNOLDS;
    reynolds = Math.min(reynolds, start(loss));
    let exponent = 1;
    for (let step = 0; step < MAX_STEPS; step++) {
      frictionAt(reynolds, relativeRoughness, friction);
      const pipeLoss = friction.factor * slenderness;
      const total = pipeLoss + minorLoss;
      exponent = 2 + (friction.exponent * pipeLoss) / total;
      const excess = Math.log((total * reynolds * reynolds) / loss);
      if (excess > 0) high = reynolds;
      else low = reynolds;
      const change = -excess / exponent;
      const next = reynolds * Math.exp(change);
      reynolds = next > low && next < high ? next : Math.sqrt(low * high);
      if (Math.abs(change) < 1e-7) break;
    }
    state.reynolds = reynolds;
    state.slope = reynolds / (exponent * loss);
  };
}

/**
 * A first Reynolds number within a few per cent of the answer: the larger of what the transition and the turbulent
 * branch of the friction curve give alone.
 */
function startingReynolds(slenderness: number, minorLoss: number, relativeRoughness: number) {
  const transition = (8 * slenderness) / 37530 ** 2;
  return (loss: number): number => {
    const inTransition = (2 * loss) / (minorLoss + Math.sqrt(minorLoss * minorLoss + 4 * transition * loss));
    // Colebrook is explicit once Re·√f is known; without minor losses it is.
    const inverseRoot = -0.8686 * Math.log(0.27 * relativeRoughness + 2.51 * Math.sqrt(slenderness / loss));
    const turbulent = loss / (slenderness / (inverseRoot * inverseRoot) + minorLoss);
    return Math.sqrt(Math.max(inTransition, turbulent));
  };
}
