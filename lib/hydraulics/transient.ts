import type { Pascal, Second } from '../units';
import type { Branch, Network } from './network';
import { solve } from './solve';

/**
 * A network whose nodes hold fuel: pressures over time, from the same elements and the same solver as the steady state.
 *
 * Each step is one implicit solve of the network with a storage branch at every node, so that nothing here knows an
 * element either, and the steady state is what the steps come to rest at.
 */
export interface TransientOptions {
  /** Volume over bulk modulus of each node, m³/Pa; 0 where a node holds nothing worth counting. */
  capacities: Float64Array;
  /** Pressures at the start, one a node. */
  start: Float64Array;
  until: Second;
  /** Demand on the branches that answer to one, at the end of a step that begins with these pressures. */
  demand?: (time: Second, pressures: Float64Array) => number;
  /** Error allowed in one step, as a share of a node's absolute pressure. */
  tolerance?: number;
  longestStep?: Second;
  /** Takes steps of this length, without looking at the error. For measuring the order. */
  fixedStep?: Second;
}

/** A moment of a transient. */
export interface Moment {
  time: Second;
  pressures: Float64Array;
  flows: Float64Array;
  demand: number;
}

const TOLERANCE = 1e-3;
/** Errors below this do not count, whatever the pressure. */
const ABSOLUTE_TOLERANCE: Pascal = 20;
const FIRST_STEP: Second = 1e-4;
/** A step may grow or shrink by no more than these. BDF2 with growing steps is stable up to 2.41. */
const LARGEST_GROWTH = 2;
const LARGEST_CUT = 0.2;
const SAFETY = 0.9;
/** Share of the gap between predictor and corrector that is the corrector's error: (2/9) / (1 + 2/9). */
const CORRECTOR_SHARE = 2 / 11;

/**
 * Follows a network from `start` until `until`, by BDF2 with adaptive steps.
 *
 *     C_i (α₀ p + α₁ p₋₁ + α₂ p₋₂) / h + Q_out,i(p) = 0     ω = h / h₋₁
 *     α₀ = (1 + 2ω)/(1 + ω),  α₁ = −(1 + ω),  α₂ = ω²/(1 + ω)
 *
 * L-stable at infinity: rail and check-valve stiffness cost no steps. The first step is backward Euler.
 *
 * @throws SolveError when a step has no solution.
 * @source Variable-step BDF2: Hairer & Wanner, Solving ODEs II, ch. V (from memory).
 */
export function followTransient(network: Network, options: TransientOptions): Moment[] {
  const { until, fixedStep, longestStep = until } = options;
  const storage = new Storage(network, options.capacities);
  const moments = [storage.at(0, options.start, options.demand?.(0, options.start) ?? 0)];
  let step = fixedStep ?? Math.min(FIRST_STEP, longestStep);
  while (until - lastOf(moments).time > 1e-12 * until) {
    const length = Math.min(step, until - lastOf(moments).time);
    const last = lastOf(moments);
    const demand = options.demand?.(last.time + length, last.pressures) ?? 0;
    const next = storage.advance(moments, length, demand);
    const error = fixedStep ? 1 : errorOf(moments, next, options.tolerance ?? TOLERANCE);
    if (error <= 1) moments.push(next);
    if (!fixedStep) step = Math.min(longestStep, length * growth(error));
  }
  return moments;
}

function growth(error: number): number {
  return Math.min(LARGEST_GROWTH, Math.max(LARGEST_CUT, SAFETY * (error + 1e-6) ** (-1 / 3)));
}

/** The network with storage at its nodes. */
class Storage {
  private readonly augmented: Network;
  /** Storage flow of node i is `rate[i] · p + offset[i]`. */
  private readonly rate: Float64Array;
  private readonly offset: Float64Array;

  constructor(
    private readonly network: Network,
    private readonly capacities: Float64Array,
  ) {
    this.rate = new Float64Array(network.nodes.length);
    this.offset = new Float64Array(network.nodes.length);
    const beyond = network.nodes.length;
    this.augmented = {
      nodes: [...network.nodes, 'storage'],
      fixed: [...network.fixed, 0],
      branches: [...network.branches, ...network.nodes.map((id, node) => this.branch(id, node, beyond))],
    };
  }

  private branch(id: string, node: number, beyond: number): Branch {
    const { rate, offset } = this;
    return {
      id: `${id} storage`,
      from: node,
      to: beyond,
      law: (inlet, _outlet, result) => {
        result.flow = (rate[node] as number) * inlet + (offset[node] as number);
        result.perInlet = rate[node] as number;
        result.perOutlet = 0;
      },
    };
  }

  /** Flows at given pressures, without a step. */
  at(time: Second, pressures: Float64Array, demand: number): Moment {
    const result = { flow: 0, perInlet: 0, perOutlet: 0, perDemand: 0 };
    const flows = Float64Array.from(this.network.branches, ({ law, from, to }) => {
      law(pressures[from] as number, pressures[to] as number, result, demand);
      return result.flow;
    });
    return { time, pressures, flows, demand };
  }

  advance(moments: readonly Moment[], step: Second, demand: number): Moment {
    const last = lastOf(moments);
    const before = moments[moments.length - 2];
    const ratio = before ? step / (last.time - before.time) : 0;
    const [now, past, older] = [(1 + 2 * ratio) / (1 + ratio), -(1 + ratio), (ratio * ratio) / (1 + ratio)];
    this.capacities.forEach((capacity, node) => {
      const known = past * (last.pressures[node] as number) + older * (before?.pressures[node] ?? 0);
      this.rate[node] = (capacity * now) / step;
      this.offset[node] = (capacity * known) / step;
    });
    const start = new Float64Array(this.network.nodes.length + 1);
    start.set(last.pressures);
    const { pressures, flows } = solve(this.augmented, { start, demand });
    return {
      time: last.time + step,
      pressures: pressures.slice(0, -1),
      flows: flows.slice(0, this.network.branches.length),
      demand,
    };
  }
}

/** Error of a step relative to what is allowed: the corrector against a parabola through the last three moments. */
function errorOf(moments: readonly Moment[], next: Moment, tolerance: number): number {
  const count = moments.length;
  const [third, second, first] = [moments[count - 3], moments[count - 2], moments[count - 1]];
  if (!third || !second || !first) return 0;
  let worst = 0;
  next.pressures.forEach((pressure, node) => {
    const predicted = extrapolate([third, second, first], node, next.time);
    const allowed = ABSOLUTE_TOLERANCE + tolerance * Math.abs(pressure);
    worst = Math.max(worst, (CORRECTOR_SHARE * Math.abs(pressure - predicted)) / allowed);
  });
  return worst;
}

/** Lagrange's parabola through three moments of one node. */
function extrapolate(moments: readonly [Moment, Moment, Moment], node: number, time: Second): Pascal {
  return moments.reduce((sum, { time: at, pressures }) => {
    const others = moments.filter((moment) => moment.time !== at);
    const weight = others.reduce((product, other) => (product * (time - other.time)) / (at - other.time), 1);
    return sum + weight * (pressures[node] as number);
  }, 0);
}

function lastOf(moments: readonly Moment[]): Moment {
  return moments[moments.length - 1] as Moment;
}
