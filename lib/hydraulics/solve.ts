import type { CubicMetrePerSecond, Pascal } from '../units';
import type { FlowAndSlopes } from './elements/element';
import { SolveError, type SolveFailure } from './errors';
import { solveInPlace } from './linear-system';
import type { Network, Solution } from './network';

/**
 * Steady operating point of a network: the pressures at which flow balances at every free node.
 *
 * Damped Newton on the balances with the laws' own slopes. Because no law's flow falls with its inlet pressure or rises
 * with its outlet pressure, the balance has one solution. It knows nothing of the elements; rail control, which ties a
 * branch to a third node, is hold-pressure.ts.
 */
export interface SolveOptions {
  /** Pressures to start from, one a node. Fixed nodes are overwritten. */
  start: Float64Array;
  /** Demand on the branches that answer to one; the starting value when `held` is given. */
  demand?: number;
  /** Holds one free node's pressure and finds the demand instead, which may come out somewhat beyond 0…1. */
  held?: { node: number; pressure: Pascal };
  maxIterations?: number;
}

/** A balance counts as met when it misses by less than this share of what passes the node… */
const RELATIVE_TOLERANCE = 3e-11;
/** …or by less than this, where next to nothing flows. */
const ABSOLUTE_TOLERANCE: CubicMetrePerSecond = 3e-16;
/** What is accepted when rounding lets no step improve any more. Mass balance is promised to 1e-9. */
const STALLED_TOLERANCE = 2e-10;
const STALLED_ABSOLUTE: CubicMetrePerSecond = 3e-15;
const DAMPING_STEPS = 24;
/** A pressure that cannot be held shows early, as steps that have to be cut to nothing. */
const DAMPING_STEPS_HELD = 6;
/**
 * A step counts only if it wins this part of the gain that the slopes promise. A square-root law answers a full step by
 * landing as far on the other side; without this the iteration would bounce there for ever.
 */
const SUFFICIENT = 0.5;
/** A demand that stays this far outside 0…1 for two steps is not coming back: the pressure to hold is out of reach. */
const DEMAND_ASTRAY = 0.5;
const MAX_ITERATIONS = 60;

/** @throws SolveError when the balances cannot be met. */
export function solve(network: Network, options: SolveOptions): Solution {
  const outcome = trySolve(network, options);
  if ('code' in outcome) throw new SolveError(outcome);
  return outcome;
}

/** As `solve`, for callers that have another way when it fails. */
export function trySolve(network: Network, options: SolveOptions): Solution | SolveFailure {
  return new Iteration(network, options).run(options.maxIterations ?? MAX_ITERATIONS);
}

/** Working arrays of one solve. All are allocated once; the loop itself allocates nothing. */
class Iteration {
  private readonly pressures: Float64Array;
  private readonly trial: Float64Array;
  private readonly flows: Float64Array;
  private readonly residuals: Float64Array;
  private readonly throughput: Float64Array;
  private readonly step: Float64Array;
  private readonly jacobian: Float64Array;
  private readonly unknown: Int32Array;
  private readonly nodeOf: Int32Array;
  private readonly size: number;
  private readonly heldUnknown: number;
  private readonly dampingSteps: number;
  private readonly result: FlowAndSlopes = { flow: 0, perInlet: 0, perOutlet: 0, perDemand: 0 };
  private demand: number;

  constructor(
    private readonly network: Network,
    { start, demand = 0, held }: SolveOptions,
  ) {
    const count = network.nodes.length;
    this.pressures = Float64Array.from(start);
    this.unknown = new Int32Array(count).fill(-1);
    this.nodeOf = new Int32Array(count);
    let size = 0;
    for (let node = 0; node < count; node++) {
      const fixed = network.fixed[node];
      if (fixed !== undefined) this.pressures[node] = fixed;
      else {
        this.nodeOf[size] = node;
        this.unknown[node] = size++;
      }
    }
    this.size = size;
    this.heldUnknown = held ? (this.unknown[held.node] ?? -1) : -1;
    if (held) this.pressures[held.node] = held.pressure;
    this.dampingSteps = held ? DAMPING_STEPS_HELD : DAMPING_STEPS;
    this.demand = demand;
    this.trial = Float64Array.from(this.pressures);
    this.flows = new Float64Array(network.branches.length);
    this.residuals = new Float64Array(size);
    this.throughput = new Float64Array(size);
    this.step = new Float64Array(size);
    this.jacobian = new Float64Array(size * size);
  }

  run(maxIterations: number): Solution | SolveFailure {
    let merit = this.assemble(this.pressures, this.demand);
    let astray = 0;
    for (let iterations = 0; iterations < maxIterations; iterations++) {
      if (this.balanced(RELATIVE_TOLERANCE, ABSOLUTE_TOLERANCE)) return this.solution(iterations);
      const undetermined = this.findStep();
      if (undetermined >= 0) return { code: 'singular', node: this.nameOf(undetermined) };
      // So near, a step that wins nothing has met the rounding of the pressures, and halving it would win no more.
      const near = this.balanced(STALLED_TOLERANCE, STALLED_ABSOLUTE);
      const next = this.takeStep(merit, near ? 1 : this.dampingSteps);
      if (next === undefined) return near ? this.solution(iterations) : this.failure(iterations);
      merit = next;
      astray = Math.abs(this.demand - 0.5) > 0.5 + DEMAND_ASTRAY ? astray + 1 : 0;
      if (astray > 1) return this.failure(iterations);
    }
    return this.failure(maxIterations);
  }

  /** Newton's direction into `step`. Returns −1, or an unknown that no flow determines. */
  private findStep(): number {
    for (let i = 0; i < this.size; i++) this.step[i] = -(this.residuals[i] as number);
    return solveInPlace(this.jacobian, this.step, this.size);
  }

  /** Cuts the step until the balances improve. Undefined when none does; then the state is as before. */
  private takeStep(merit: number, attempts: number): number | undefined {
    const demand = this.demand;
    let share = 1;
    for (let attempt = 0; attempt < attempts; attempt++) {
      const next = this.tryShare(share, demand);
      if (next <= merit * (1 - SUFFICIENT * share)) {
        this.pressures.set(this.trial);
        return next;
      }
      share = cutShare(share, merit, next);
    }
    this.demand = demand;
    this.assemble(this.pressures, demand);
    return undefined;
  }

  /** Puts a share of the step into `trial` and `demand`, and evaluates there. */
  private tryShare(share: number, demand: number): number {
    for (let i = 0; i < this.size; i++) {
      if (i === this.heldUnknown) continue;
      const node = this.nodeOf[i] as number;
      this.trial[node] = (this.pressures[node] as number) + share * (this.step[i] as number);
    }
    if (this.heldUnknown >= 0) this.demand = demand + share * (this.step[this.heldUnknown] as number);
    return this.assemble(this.trial, this.demand);
  }

  /** Evaluates every law; fills residuals (net outflow), throughput and Jacobian. Returns the sum of squared misses. */
  private assemble(pressures: Float64Array, demand: number): number {
    this.residuals.fill(0);
    this.throughput.fill(0);
    this.jacobian.fill(0);
    const { branches } = this.network;
    for (let index = 0; index < branches.length; index++) this.addBranch(index, pressures, demand);
    let merit = 0;
    for (let i = 0; i < this.size; i++) merit += (this.residuals[i] as number) ** 2;
    return Number.isNaN(merit) ? Number.POSITIVE_INFINITY : merit;
  }

  private addBranch(index: number, pressures: Float64Array, demand: number): void {
    const branch = this.network.branches[index];
    if (branch === undefined) return;
    const { result } = this;
    result.perDemand = 0;
    branch.law(pressures[branch.from] as number, pressures[branch.to] as number, result, demand);
    this.flows[index] = result.flow;
    const from = this.unknown[branch.from] as number;
    const to = this.unknown[branch.to] as number;
    if (from >= 0) this.addToRow(from, from, to, 1);
    if (to >= 0) this.addToRow(to, from, to, -1);
  }

  private addToRow(row: number, from: number, to: number, sign: 1 | -1): void {
    const { result, jacobian, residuals, throughput, size, heldUnknown } = this;
    residuals[row] = (residuals[row] as number) + sign * result.flow;
    throughput[row] = (throughput[row] as number) + Math.abs(result.flow);
    const start = row * size;
    if (from >= 0 && from !== heldUnknown)
      jacobian[start + from] = (jacobian[start + from] as number) + sign * result.perInlet;
    if (to >= 0 && to !== heldUnknown)
      jacobian[start + to] = (jacobian[start + to] as number) + sign * result.perOutlet;
    if (heldUnknown >= 0) {
      jacobian[start + heldUnknown] = (jacobian[start + heldUnknown] as number) + sign * result.perDemand;
    }
  }

  private balanced(relative: number, absolute: number): boolean {
    for (let i = 0; i < this.size; i++) {
      const miss = Math.abs(this.residuals[i] as number);
      if (!(miss <= absolute || miss <= relative * (this.throughput[i] as number))) return false;
    }
    return true;
  }

  private solution(iterations: number): Solution {
    return { pressures: this.pressures, flows: this.flows, demand: this.demand, iterations };
  }

  private nameOf(unknown: number): string {
    return this.network.nodes[this.nodeOf[unknown] as number] ?? '';
  }

  private failure(iterations: number): SolveFailure {
    let worst = 0;
    for (let i = 1; i < this.size; i++) {
      if (Math.abs(this.residuals[i] as number) > Math.abs(this.residuals[worst] as number)) worst = i;
    }
    return {
      code: 'not-converged',
      node: this.nameOf(worst),
      residual: this.residuals[worst] ?? 0,
      iterations,
      demand: this.demand,
    };
  }
}

/**
 * The share at which a parabola through what is known of the balances has its least: their size and slope at no step,
 * their size at the step just tried. Kept between a twentieth and a half of that step.
 */
function cutShare(share: number, merit: number, tried: number): number {
  const least = (share * share * merit) / (tried - merit * (1 - 2 * share));
  return Math.min(share / 2, Math.max(share / 20, least));
}
