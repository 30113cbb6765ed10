import type { CubicMetrePerSecond, Pascal } from '../units';
import { cutShare } from './cut-share';
import type { FlowAndSlopes } from './elements/element';
import { SolveError, type SolveFailure } from './errors';
import { solveInPlace } from './linear-system';
import type { Branch, Network, Solution } from './network';
import { bandOf, numberUnknowns } from './unknowns';
import { unreached } from './unreached';
import { type Workspace, workspaceFor } from './workspace';

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
const ABSOLUTE_TOLERANCE: CubicMetrePerSecond = 2e-18;
/** What is accepted when rounding lets no step improve any more. Mass balance is promised to 1e-9. */
const STALLED_TOLERANCE = 2e-10;
const STALLED_ABSOLUTE: CubicMetrePerSecond = 3e-15;
const DAMPING_STEPS = 24;
/** A pressure that cannot be held shows early, as steps that have to be cut to nothing. */
const DAMPING_STEPS_HELD = 10;
/**
 * A step counts only if it wins this part of the gain that the slopes promise. A square-root law answers a full step by
 * landing as far on the other side; without this the iteration would bounce there for ever.
 */
const SUFFICIENT = 0.5;
/**
 * A solve that sets out from balances that miss by more than FAR of what passes begins with this share of a step. Flow grows
 * less than in step with its drop, so that full steps overshoot from afar; over random networks of pipes the shorter one
 * saves a tenth of the evaluations.
 */
const FIRST_SHARE = 0.8;
const FAR = 0.3;
/** A step begins at no more than this many times the share that the last one was cut to, which saves cutting it again. */
const SHARE_GROWTH = 2;
/** …nor at less than this, so that what cannot be balanced shows as soon as ever. */
const LEAST_SHARE = 0.02;
/** A demand that stays this far outside 0…1 for two steps is not coming back: the pressure to hold is out of reach. */
const DEMAND_ASTRAY = 0.5;
const MAX_ITERATIONS = 200;

/** @throws SolveError when the balances cannot be met. */
export function solve(network: Network, options: SolveOptions): Solution {
  const outcome = trySolve(network, options);
  if ('code' in outcome) throw new SolveError(outcome);
  return outcome;
}

/** As `solve`, for callers that have another way when it fails. */
export function trySolve(network: Network, options: SolveOptions): Solution | SolveFailure {
  const work = workspaceFor(network.nodes.length);
  return unreached(network, work) ?? new Iteration(network, options, work).run(options.maxIterations ?? MAX_ITERATIONS);
}

/** One solve. The loop allocates nothing. */
class Iteration {
  private readonly pressures: Float64Array;
  private readonly flows: Float64Array;
  private readonly size: number;
  private readonly band: number;
  private readonly heldUnknown: number;
  private readonly dampingSteps: number;
  private readonly result: FlowAndSlopes = { flow: 0, perInlet: 0, perOutlet: 0, perDemand: 0 };
  private demand: number;
  /** At which the next step begins. */
  private share = 1;

  constructor(
    private readonly network: Network,
    { start, demand = 0, held }: SolveOptions,
    private readonly work: Workspace,
  ) {
    // One allocation for both halves of the answer: a typed array costs as much as several laws.
    const { buffer } = new Float64Array(start.length + network.branches.length);
    this.pressures = new Float64Array(buffer, 0, start.length);
    this.flows = new Float64Array(buffer, start.length * Float64Array.BYTES_PER_ELEMENT);
    for (let node = 0; node < start.length; node++) this.pressures[node] = start[node] as number;
    this.size = numberUnknowns(network, work, this.pressures);
    this.heldUnknown = held ? (work.unknown[held.node] ?? -1) : -1;
    // The demand's column may reach any row.
    this.band = this.heldUnknown < 0 ? bandOf(network, work) : this.size - 1;
    if (held) this.pressures[held.node] = held.pressure;
    this.dampingSteps = held ? DAMPING_STEPS_HELD : DAMPING_STEPS;
    this.demand = demand;
    for (let node = 0; node < start.length; node++) work.trial[node] = this.pressures[node] as number;
  }

  run(maxIterations: number): Solution | SolveFailure {
    let merit = this.assemble(this.pressures, this.demand);
    if (!this.balanced(FAR, 0)) this.share = FIRST_SHARE;
    let astray = 0;
    for (let iterations = 0; iterations < maxIterations; iterations++) {
      if (this.balanced(RELATIVE_TOLERANCE, ABSOLUTE_TOLERANCE)) return this.solution(iterations);
      const undetermined = this.findStep();
      if (undetermined >= 0) return { code: 'singular', node: this.nameOf(undetermined) };
      // So near, a step that wins nothing has met the rounding of the pressures, and halving it would win no more.
      const near = this.balanced(STALLED_TOLERANCE, STALLED_ABSOLUTE);
      const next = near ? this.takeStep(merit, 1, 1) : this.takeStep(merit, this.share, this.dampingSteps);
      if (next === undefined) return near ? this.solution(iterations) : this.failure(iterations);
      merit = next;
      astray = Math.abs(this.demand - 0.5) > 0.5 + DEMAND_ASTRAY ? astray + 1 : 0;
      if (astray > 1) return this.failure(iterations);
    }
    return this.failure(maxIterations);
  }

  /** Newton's direction into `step`. Returns −1, or an unknown that no flow determines. */
  private findStep(): number {
    for (let i = 0; i < this.size; i++) this.work.step[i] = -(this.work.residuals[i] as number);
    return solveInPlace(this.work.jacobian, this.work.step, this.size, this.band);
  }

  /** Cuts the step until the balances improve. Undefined when none does; then the state is as before. */
  private takeStep(merit: number, first: number, attempts: number): number | undefined {
    const demand = this.demand;
    let share = first;
    for (let attempt = 0; attempt < attempts; attempt++) {
      const next = this.tryShare(share, demand);
      if (Number.isFinite(next) && next <= merit * (1 - SUFFICIENT * share)) {
        this.share = Math.min(1, Math.max(LEAST_SHARE, SHARE_GROWTH * share));
        this.keepTrial();
        return next;
      }
      share = cutShare(share, merit, next);
    }
    this.demand = demand;
    this.assemble(this.pressures, demand);
    return undefined;
  }

  private keepTrial(): void {
    const { pressures } = this;
    const { nodeOf, trial } = this.work;
    for (let i = 0; i < this.size; i++) {
      const node = nodeOf[i] as number;
      pressures[node] = trial[node] as number;
    }
  }

  /** Puts a share of the step into `trial` and `demand`, and evaluates there. */
  private tryShare(share: number, demand: number): number {
    for (let i = 0; i < this.size; i++) {
      if (i === this.heldUnknown) continue;
      const node = this.work.nodeOf[i] as number;
      this.work.trial[node] = (this.pressures[node] as number) + share * (this.work.step[i] as number);
    }
    if (this.heldUnknown >= 0) this.demand = demand + share * (this.work.step[this.heldUnknown] as number);
    return this.assemble(this.work.trial, this.demand);
  }

  /**
   * Evaluates every law; fills residuals (net outflow), throughput and Jacobian. Returns the sum of squared misses.
   * One function, as this is where the time goes.
   */
  private assemble(pressures: Float64Array, demand: number): number {
    const { result, size, band, heldUnknown, flows } = this;
    const { jacobian, residuals, throughput, unknown, demandSlopes } = this.work;
    const { branches } = this.network;
    // Typed arrays' own `fill` costs more than these few entries.
    for (let row = 0; row < size; row++) {
      residuals[row] = throughput[row] = demandSlopes[row] = 0;
      const end = row * size + Math.min(size - 1, row + 2 * band);
      for (let at = row * size + Math.max(0, row - band); at <= end; at++) jacobian[at] = 0;
    }
    for (let index = 0; index < branches.length; index++) {
      const branch = branches[index] as Branch;
      result.perDemand = 0;
      branch.law(pressures[branch.from] as number, pressures[branch.to] as number, result, demand);
      const { flow, perInlet, perOutlet, perDemand } = result;
      flows[index] = flow;
      const passing = Math.abs(flow);
      const from = unknown[branch.from] as number;
      const to = unknown[branch.to] as number;
      if (from >= 0) {
        const row = from * size;
        residuals[from] = (residuals[from] as number) + flow;
        throughput[from] = (throughput[from] as number) + passing;
        jacobian[row + from] = (jacobian[row + from] as number) + perInlet;
        if (to >= 0) jacobian[row + to] = (jacobian[row + to] as number) + perOutlet;
        demandSlopes[from] = (demandSlopes[from] as number) + perDemand;
      }
      if (to >= 0) {
        const row = to * size;
        residuals[to] = (residuals[to] as number) - flow;
        throughput[to] = (throughput[to] as number) + passing;
        jacobian[row + to] = (jacobian[row + to] as number) - perOutlet;
        if (from >= 0) jacobian[row + from] = (jacobian[row + from] as number) - perInlet;
        demandSlopes[to] = (demandSlopes[to] as number) - perDemand;
      }
    }
    // A held node's pressure is given: its column belongs to the demand instead.
    if (heldUnknown >= 0) {
      for (let row = 0; row < size; row++) jacobian[row * size + heldUnknown] = demandSlopes[row] as number;
    }
    let merit = 0;
    for (let i = 0; i < size; i++) merit += (residuals[i] as number) ** 2;
    return Number.isNaN(merit) ? Number.POSITIVE_INFINITY : merit;
  }

  private balanced(relative: number, absolute: number): boolean {
    for (let i = 0; i < this.size; i++) {
      const miss = Math.abs(this.work.residuals[i] as number);
      if (!(miss <= absolute || miss <= relative * (this.work.throughput[i] as number))) return false;
    }
    return true;
  }

  private solution(iterations: number): Solution {
    return { pressures: this.pressures, flows: this.flows, demand: this.demand, iterations };
  }

  private nameOf(unknown: number): string {
    return this.network.nodes[this.work.nodeOf[unknown] as number] ?? '';
  }

  private failure(iterations: number): SolveFailure {
    let worst = 0;
    for (let i = 1; i < this.size; i++) {
      if (Math.abs(this.work.residuals[i] as number) > Math.abs(this.work.residuals[worst] as number)) worst = i;
    }
    return {
      code: 'not-converged',
      node: this.nameOf(worst),
      residual: this.work.residuals[worst] ?? 0,
      iterations,
      demand: this.demand,
    };
  }
}
