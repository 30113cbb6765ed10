import type { Second } from '../units';
import type { Network } from './network';
import type { Store } from './store';
import type { PaceOptions } from './transient-pace';

/** A network, or what it is at a time: the same nodes, the same of them fixed, the same list of branches, other laws. */
export type NetworkOverTime = Network | ((time: Second) => Network);

/** Sets the demand on the branches that answer to one, and may keep a state of its own, such as an integral. */
export interface Controller {
  /** Demand throughout a step that ends at `time` and began with these pressures. Asked for steps that fail, too. */
  demand(time: Second, pressures: Float64Array): number;
  /** Called once for every step that stands, with where it ended: the place to move the controller's state on. */
  accept?(time: Second, pressures: Float64Array): void;
}

export interface TransientOptions extends PaceOptions {
  /** What each node holds; undefined where that is not worth counting. */
  stores: readonly (Store | undefined)[];
  /** Pressures at the start, one a node. */
  start: Float64Array;
  until: Second;
  /** Without one, demand is 0. It is not asked within a step: `longestStep` is its sampling time. */
  controller?: Controller;
  /**
   * Times at which the laws jump or bend, such as a valve that opens. Steps end there, and what follows starts afresh. A
   * step that ends at a break sees the laws just before it.
   */
  breaks?: readonly Second[];
  /** Error allowed in one step, as a share of a node's absolute pressure. */
  tolerance?: number;
  /** Steps that may be tried, standing or not. */
  mostSteps?: number;
}

/** A moment of a transient. Lent: the arrays are overwritten by the next moment, so copy what is to be kept. */
export interface Moment {
  time: Second;
  pressures: Float64Array;
  /** m³ by node, as its store counts it. */
  volumes: Float64Array;
  /** m³/s by branch, those of the stores beyond the network's own. */
  flows: Float64Array;
  demand: number;
}

/** What is kept of a moment unless the caller says otherwise. */
export type MomentPressures = Pick<Moment, 'time' | 'pressures'>;
