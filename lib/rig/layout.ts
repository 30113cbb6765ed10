import type { Rig, Side } from './rig';
import { sides } from './rig';

/** Where an element stands between the nodes. */
export interface Ends {
  from: number;
  to: number;
  /** Whose fuel it holds: that of the side it draws from. */
  side: Side;
}

/** How a rig hangs together, by index. No cause changes it. */
export interface Layout {
  ids: readonly string[];
  indexOf: ReadonlyMap<string, number>;
  /** Nodes of each side. */
  members: Readonly<Record<Side, readonly number[]>>;
  /** By element, in the rig's order; undefined for those that pass nothing. */
  ends: readonly (Ends | undefined)[];
}

const layouts = new WeakMap<Rig['nodes'], Layout>();

/** A rig's layout, worked out once and kept as long as its nodes are; a rig with something wrong with it has the same. */
export function layoutOf(rig: Rig): Layout {
  const known = layouts.get(rig.nodes) ?? workOut(rig);
  layouts.set(rig.nodes, known);
  return known;
}

function workOut({ nodes, elements }: Rig): Layout {
  const indexOf = new Map(nodes.map(({ id }, index) => [id, index]));
  const ends = elements.map((element) => {
    if (!('from' in element)) return undefined;
    const [from, to] = [indexOf.get(element.from), indexOf.get(element.to)];
    if (from === undefined || to === undefined) return undefined;
    const side = nodes[from]?.side ?? 'low';
    return { from, to, side: side === 'ambient' ? (nodes[to]?.side ?? 'low') : side };
  });
  const membersOf = (side: Side) => nodes.flatMap((node, index) => (node.side === side ? [index] : []));
  return {
    ids: nodes.map(({ id }) => id),
    indexOf,
    members: Object.fromEntries(sides.map((side) => [side, membersOf(side)])) as unknown as Layout['members'],
    ends,
  };
}
