import type { CubicMetrePerSecond, Pascal } from '../units';
import type { FlowAndSlopes } from './elements/element';
import { SolveError } from './errors';
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
  /** Holds one free node's pressure and finds the demand instead. The demand may come out beyond 0…1. */
  held?: { node: number; pressure: Pascal };
  maxIterations?: number;
}

/** A balance counts as met when it misses by less than this share of what passes the node… */
const RELATIVE_TOLERANCE = 1e-11;
/** …or by less than this, where next to nothing flows. */
const ABSOLUTE_TOLERANCE: CubicMetrePerSecond = 1e-16;
/** What is accepted when rounding lets no step improve any more. Mass balance is promised to 1e-9. */
const STALLED_TOLERANCE = 2e-10;
const STALLED_ABSOLUTE: CubicMetrePerSecond = 1e-15;
const DAMPING_STEPS = 24;
/**
 * A step counts only if it wins this part of the gain that the slopes promise. A square-root law answers a full step by
 * landing as far on the other side; without this the iteration would bounce there for ever.
 */
const SUFFICIENT = 0.5;
/** Beyond this demand a held pressure is out of reach, however wide the valve. */
const DEMAND_OUT_OF_REACH = 4;

/** @throws SolveError when the balances cannot be met. */
export function solve(network: Network, options: SolveOptions): Solution {
  const iteration = new Iteration(network, options);
  return iteration.run(options.maxIterations ?? 60);
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
    this.demand = demand;
    this.trial = Float64Array.from(this.pressures);
    this.flows = new Float64Array(network.branches.length);
    this.residuals = new Float64Array(size);
    this.throughput = new Float64Array(size);
    this.step = new Float64Array(size);
    this.jacobian = new Float64Array(size * size);
  }

  run(maxIterations: number): Solution {
    let merit = this.assemble(this.pressures, this.demand);
    for (let iterations = 0; iterations < maxIterations; iterations++) {
      if (this.balanced(RELATIVE_TOLERANCE, ABSOLUTE_TOLERANCE)) return this.solution(iterations);
      this.findStep();
      const next = this.takeStep(merit);
      if (next === undefined) {
        if (this.balanced(STALLED_TOLERANCE, STALLED_ABSOLUTE)) return this.solution(iterations);
        throw this.failure(iterations);
      }
      merit = next;
      if (Math.abs(this.demand) > DEMAND_OUT_OF_REACH) throw this.failure(iterations);
    }
    throw this.failure(maxIterations);
  }

  /** Newton's direction into `step`. */
  private findStep(): void {
    for (let i = 0; i < this.size; i++) this.step[i] = -(this.residuals[i] as number);
    const column = solveInPlace(this.jacobian, this.step, this.size);
    if (column >= 0) {
      throw new SolveError({ code: 'singular', node: this.network.nodes[this.nodeOf[column] as number] as string });
    }
  }

  /** Halves the step until the balances improve. Undefined when none does; then the state is as before. */
  private takeStep(merit: number): number | undefined {
    const demand = this.demand;
    let share = 1;
    for (let attempt = 0; attempt < DAMPING_STEPS; attempt++, share /= 2) {
      for (let i = 0; i < this.size; i++) {
        if (i === this.heldUnknown) continue;
        const node = this.nodeOf[i] as number;
        this.trial[node] = (this.pressures[node] as number) + share * (this.step[i] as number);
      }
      if (this.heldUnknown >= 0) this.demand = demand + share * (this.step[this.heldUnknown] as number);
      const next = this.assemble(this.trial, this.demand);
      if (next <= merit * (1 - SUFFICIENT * share)) {
        this.pressures.set(this.trial);
        return next;
      }
    }
    this.demand = demand;
    this.assemble(this.pressures, demand);
    return undefined;
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

  private failure(iterations: number): SolveError {
    let worst = 0;
    for (let i = 1; i < this.size; i++) {
      if (Math.abs(this.residuals[i] as number) > Math.abs(this.residuals[worst] as number)) worst = i;
    }
    const node = this.network.nodes[this.nodeOf[worst] as number] ?? '';
    return new SolveError({ code: 'not-converged', node, residual: this.residuals[worst] ?? 0, iterations });
  }
}
