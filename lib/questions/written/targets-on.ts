import type { Rig } from '../../rig/rig';
import type { Target } from '../figure';
import type { Line } from '../line';

/** Kinds of elements that are places where something goes wrong, and no parts. */
const NO_PARTS: readonly string[] = ['air-leak', 'outside-leak', 'clearance-leak', 'injector-return'];

/** What can be pointed at where these are right: everything of their sorts, in the order of the rig, which is that of the flow. */
export function targetsOn(rig: Rig, right: readonly Omit<Target, 'id'>[]): (Target & { line: Line })[] {
  const asked = new Set(right.map(({ what }) => what));
  const isRight = (what: Target['what'], of: string) => right.some((one) => one.what === what && one.of === of);
  const parts = rig.elements.filter(({ id, kind }) => !NO_PARTS.includes(kind) || isRight('element', id));
  const places = [
    ...(asked.has('element') ? parts.map(({ id }) => ({ what: 'element' as const, of: id })) : []),
    ...(asked.has('node') ? rig.nodes.map(({ id }) => ({ what: 'node' as const, of: id })) : []),
    ...(asked.has('port') ? rig.ports.map(({ id }) => ({ what: 'port' as const, of: id })) : []),
  ];
  return places.map((place, index) => ({ id: `p${index + 1}`, ...place, line: { markdown: String(index + 1) } }));
}
