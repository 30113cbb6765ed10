import type { SolveFailure } from './errors';
import type { Network } from './network';
import type { Workspace } from './workspace';

/** Nodes that no fixed pressure reaches through any branch: theirs would be anybody's guess. */
export function unreached({ nodes, fixed, branches }: Network, { reached }: Workspace): SolveFailure | undefined {
  let left = 0;
  for (let node = 0; node < nodes.length; node++) {
    reached[node] = fixed[node] === undefined ? 0 : 1;
    if (reached[node] === 0) left++;
  }
  for (let before = left + 1; left > 0 && left < before; ) {
    before = left;
    for (const { from, to } of branches) {
      if (reached[from] === reached[to]) continue;
      reached[from] = reached[to] = 1;
      left--;
    }
  }
  if (left === 0) return undefined;
  return { code: 'no-reference-pressure', nodes: nodes.filter((_node, index) => reached[index] === 0) };
}
