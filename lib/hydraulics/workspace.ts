/**
 * Working arrays of one solve, kept from solve to solve: allocating them would cost as much as two iterations. Nothing
 * in them outlives a solve; laws must not solve networks themselves.
 */
export interface Workspace {
  trial: Float64Array;
  residuals: Float64Array;
  throughput: Float64Array;
  step: Float64Array;
  /** ∂residual/∂demand. */
  demandSlopes: Float64Array;
  /** Unknowns × unknowns, row by row, at its beginning. Kept up within the band only, see linear-system.ts. */
  jacobian: Float64Array;
  /** Unknown of each node, −1 where its pressure is fixed. */
  unknown: Int32Array;
  /** Node of each unknown. */
  nodeOf: Int32Array;
  /** 1 where a fixed pressure reaches the node. */
  reached: Uint8Array;
}

const workspaces = new Map<number, Workspace>();

/** The workspace for networks of so many nodes. */
export function workspaceFor(nodes: number): Workspace {
  const known = workspaces.get(nodes);
  if (known) return known;
  const made: Workspace = {
    trial: new Float64Array(nodes),
    residuals: new Float64Array(nodes),
    throughput: new Float64Array(nodes),
    step: new Float64Array(nodes),
    demandSlopes: new Float64Array(nodes),
    jacobian: new Float64Array(nodes * nodes),
    unknown: new Int32Array(nodes),
    nodeOf: new Int32Array(nodes),
    reached: new Uint8Array(nodes),
  };
  workspaces.set(nodes, made);
  return made;
}
