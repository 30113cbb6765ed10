/** Why a network could not be solved. Callers switch on `code`. */
export type SolveFailure =
  | { code: 'no-reference-pressure'; nodes: readonly string[] }
  | { code: 'singular'; node: string }
  | { code: 'not-converged'; node: string; residual: number; iterations: number; demand: number };

/** Thrown when a network has no steady state that we can find. Its message is for developers. */
export class SolveError extends Error {
  override name = 'SolveError';

  constructor(readonly failure: SolveFailure) {
    super(explain(failure));
  }
}

function explain(failure: SolveFailure): string {
  switch (failure.code) {
    case 'no-reference-pressure':
      return `No fixed pressure reaches ${failure.nodes.join(', ')}`;
    case 'singular':
      return `The pressure at ${failure.node} is not determined by any flow`;
    case 'not-converged':
      return `Flows at ${failure.node} miss balance by ${failure.residual} m³/s after ${failure.iterations} iterations`;
  }
}
