import type { Pascal, Second } from '../units';
import type { SolveFailure } from './errors';
import type { Branch, Network, Solution } from './network';
import { trySolve } from './solve';
import type { Store, StoredVolume } from './store';
import { carriedCoefficient, leadingCoefficient } from './transient-bdf';
import type { History, Instant } from './transient-history';

/** A store with what it needs for one step: it takes scale · (S(p) − held) − carried, m³/s. */
interface StoreState {
  node: number;
  store: Store;
  /** α₀/h */
  scale: number;
  /** S at the last instant. */
  held: number;
  /** What BDF2 carries over from the step before. */
  carried: number;
  /** ∂S/∂p where last looked at. */
  slope: number;
}

const nothing: Store = (_pressure, result) => {
  result.volume = 0;
  result.perPressure = 0;
};

/** The share of a number that a double loses, four times over for the sums it goes through. */
const ROUNDING = 4 * 2 ** -53;
/** The share of the flow through a node by which the solver lets its balance miss. */
const SOLVER_SHARE = 3e-11;

/**
 * A network with a branch from every node that has a store to one more node, `storage`: an implicit step is one solve
 * of it.
 *
 * A second branch brings back part of what the first takes, as a flow in a circle. It moves nothing. But the solver lets
 * balances miss by a share of the flow through the node, and the circle makes that no less than what the rounding of
 * the pressure does within a step to the largest store of all: the air in a tank could not be followed in short steps
 * otherwise, nor anything beside it, as the solver weighs all misses together. In volume that is the last digit of what
 * the tank holds.
 */
export class StoreNetwork {
  private readonly states: readonly StoreState[];
  private readonly storeBranches: readonly Branch[];
  private readonly stored: StoredVolume = { volume: 0, perPressure: 0 };
  private readonly start: Float64Array;
  /** Flow in a circle through each node. */
  private circling = 0;
  private known: Network | undefined;
  private augmented: Network | undefined;

  /** Stores at nodes of fixed pressure do not matter and are left out; the others get one that holds nothing. */
  constructor({ nodes, fixed }: Network, stores: readonly (Store | undefined)[]) {
    this.states = nodes.flatMap((_id, node) => {
      if (fixed[node] !== undefined) return [];
      return [{ node, store: stores[node] ?? nothing, scale: 0, held: 0, carried: 0, slope: 0 }];
    });
    this.storeBranches = this.states.flatMap((state) => this.branchesOf(state, nodes[state.node] ?? '', nodes.length));
    this.start = new Float64Array(nodes.length + 1);
  }

  /** Fills in the volumes that the nodes hold at an instant's pressures. */
  fill({ pressures, volumes }: Instant): void {
    for (const state of this.states) {
      state.store(pressures[state.node] as number, this.stored);
      volumes[state.node] = this.stored.volume;
      state.slope = this.stored.perPressure;
    }
  }

  /**
   * One step on from a history that aims at its end.
   *
   * @param guess  Where Newton starts: where the history points, or where it ends.
   */
  step(
    network: Network,
    history: History,
    length: Second,
    demand: number,
    guess: 'ahead' | 'last',
  ): Solution | SolveFailure {
    this.prepare(history, length);
    const { pressures } = history.last;
    for (let node = 0; node < pressures.length; node++) {
      this.start[node] = guess === 'ahead' ? history.extrapolate('pressures', node) : (pressures[node] as number);
    }
    return trySolve(this.withStores(network), { start: this.start, demand });
  }

  /**
   * The largest gap between the volumes of the history's next instant, just filled in, and where the history pointed,
   * told as pressure over the pressure allowed.
   */
  largestGap(history: History, relative: number, absolute: Pascal): number {
    const { pressures, volumes } = history.next;
    let largest = 0;
    for (const { node, slope } of this.states) {
      const gap = Math.abs((volumes[node] as number) - history.extrapolate('volumes', node));
      const allowed = slope * (absolute + relative * Math.abs(pressures[node] as number));
      if (gap > largest * allowed) largest = gap / allowed;
    }
    return largest;
  }

  private prepare(history: History, length: Second): void {
    const ratio = history.length > 1 ? length / history.gap(0) : 0;
    const scale = leadingCoefficient(ratio) / length;
    const carry = carriedCoefficient(ratio) / length;
    const { last, before } = history;
    let rounding = 0;
    for (const state of this.states) {
      const held = last.volumes[state.node] as number;
      const pressure = Math.abs(last.pressures[state.node] as number);
      state.scale = scale;
      state.held = held;
      state.carried = ratio > 0 ? carry * (held - (before.volumes[state.node] as number)) : 0;
      rounding = Math.max(rounding, ROUNDING * (state.slope * pressure + Math.abs(held)));
    }
    this.circling = (scale * rounding) / SOLVER_SHARE;
  }

  private branchesOf(state: StoreState, id: string, storage: number): Branch[] {
    const { store, node } = state;
    const { stored } = this;
    const ends = { from: node, to: storage };
    return [
      {
        ...ends,
        id: `${id} store`,
        law: (inlet, _outlet, result) => {
          store(inlet, stored);
          result.flow = state.scale * (stored.volume - state.held) - state.carried - this.circling;
          result.perInlet = state.scale * stored.perPressure;
          result.perOutlet = 0;
        },
      },
      {
        ...ends,
        id: `${id} circle`,
        law: (_inlet, _outlet, result) => {
          result.flow = this.circling;
          result.perInlet = 0;
          result.perOutlet = 0;
        },
      },
    ];
  }

  private withStores(network: Network): Network {
    if (network === this.known && this.augmented) return this.augmented;
    this.known = network;
    this.augmented = {
      nodes: [...network.nodes, 'storage'],
      fixed: [...network.fixed, 0],
      branches: [...network.branches, ...this.storeBranches],
    };
    return this.augmented;
  }
}
