import type { Pascal } from '../units';
import type { Law } from './elements/element';

/**
 * A network as the solver knows it: nodes with a pressure, branches with a law. What the laws stand for, it does not
 * ask.
 */
export interface Branch {
  id: string;
  /** Index of the node at the normal inlet. */
  from: number;
  /** Index of the node at the normal outlet. */
  to: number;
  law: Law;
}

export interface Network {
  nodes: readonly string[];
  /** Absolute pressure of each node that is held from outside; undefined where it follows from the balance. */
  fixed: readonly (Pascal | undefined)[];
  branches: readonly Branch[];
}

/** Where a network comes to rest. Arrays are indexed like the network's nodes and branches. */
export interface Solution {
  pressures: Float64Array;
  /** m³/s, positive from inlet to outlet. */
  flows: Float64Array;
  /** Demand on the branches that answer to it. */
  demand: number;
  iterations: number;
}
