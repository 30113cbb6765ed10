import type { SolveFailure } from './errors';
import type { Network } from './network';
import type { Workspace } from './workspace';

/** Nodes that no fixed pressure reaches through any branch: theirs would be anybody's guess. */
export function unreached({ nodes, fixed, branches }: Network, { reached }: Workspace): SolveFailure | undefined {
  for (let node = 0; node < nodes.length; node++) reached[node] = fixed[node] === undefined ? 0 : 1;
  for (let found = true; found; ) {
    found = false;
    for (const { from, to } of branches) {
      if (reached[from] === reached[to]) continue;
      reached[from] = reached[to] = 1;
      found = true;
    }
  }
  if (reached.indexOf(0) < 0) return undefined;
  return { code: 'no-reference-pressure', nodes: nodes.filter((_node, index) => reached[index] === 0) };
}
