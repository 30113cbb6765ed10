import { type Metre, type Pascal, STANDARD_GRAVITY } from '../../units';
import type { Fluid, Law } from './element';
import { type Friction, frictionAt, LAMINAR_REYNOLDS, viscousTerm } from './friction';

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

/** The sharpest bend of the transition takes six; turbulent flow two. */
const MAX_STEPS = 30;
/** Relative error at which Newton's method stops; it then doubles the digits once more. */
const TOLERANCE = 1e-13;
/** Change below which even the sharpest bend of the curve lets the next error vanish in rounding. */
const SMALL_CHANGE = 1e-8;

/**
 * Solves (f(Re)·slenderness + minorLoss)·Re² = loss for Re by Newton's method on logarithms, in which the equation is
 * nearly straight: its slope lies between 1 and 4. It starts from the loss alone, so that the same loss always gives the
 * same bits. A loss that is no number gives one that is none.
 */
function reynoldsSolver(slenderness: number, minorLoss: number, relativeRoughness: number) {
  const friction: Friction = { factor: 0, exponent: 0 };
  const start = startingReynolds(slenderness, minorLoss, relativeRoughness);
  const laminar = 64 * slenderness;
  return (loss: number, state: PipeState): void => {
    const laminarRoot = Math.sqrt(laminar * laminar + 4 * minorLoss * loss);
    const laminarReynolds = (2 * loss) / (laminar + laminarRoot);
    if (!(laminarReynolds > LAMINAR_REYNOLDS)) {
      state.reynolds = laminarReynolds;
      state.slope = 1 / laminarRoot;
      return;
    }
    let reynolds = Math.max(LAMINAR_REYNOLDS, Math.min(laminarReynolds, start(loss)));
    let viscous = viscousTerm(reynolds);
    let exponent = 1;
    let previous = SMALL_CHANGE * Math.sqrt(SMALL_CHANGE / TOLERANCE);
    for (let step = 0; step < MAX_STEPS; step++) {
      frictionAt(reynolds, viscous, relativeRoughness, friction);
      const pipeLoss = friction.factor * slenderness;
      const total = pipeLoss + minorLoss;
      exponent = 2 + (friction.exponent * pipeLoss) / total;
      const ratio = (total * reynolds * reynolds) / loss;
      // 2(x − 1)/(x + 1) is ln x near 1.
      const change = (2 * (1 - ratio)) / ((1 + ratio) * exponent);
      reynolds *= exponential(change);
      viscous *= exponential(-0.9 * change);
      // The next error is about change²·(change/previous²).
      if (Math.abs(change * change * change) <= TOLERANCE * previous * previous) break;
      previous = change;
    }
    state.reynolds = reynolds;
    state.slope = reynolds / (exponent * loss);
  };
}

/** e^x, by a fraction where that is exact to rounding. */
function exponential(x: number): number {
  if (Math.abs(x) > 0.02) return Math.exp(x);
  const even = 1 + (x * x) / 10;
  const odd = (x / 2) * (1 + (x * x) / 60);
  return (even + odd) / (even - odd);
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
