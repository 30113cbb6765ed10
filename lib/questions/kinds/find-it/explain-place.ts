import type { RigElement } from '../../../rig/element';
import type { Rig } from '../../../rig/rig';
import type { Line, Value } from '../../line';
import { passedParts } from '../../shared/flow-path';
import { nameOfStop } from './name-of-stop';
import type { Place } from './places';

/** Where a place comes on the way of the fuel, by the names of its neighbours. */
export function explainPlace({ what, stop, name, seen }: Place, rig: Rig): Line[] {
  const at: Value = { line: nameOfStop(stop, rig) };
  const port: Line[] = what === 'port' ? [{ say: `port-at-${stop.what}`, with: { it: { line: name }, at } }] : [];
  const element = stop.what === 'element' ? rig.elements.find(({ id }) => id === stop.id) : undefined;
  const way =
    element?.kind === 'rail-sensor' ? [{ say: 'measures', with: { at } }] : wayThrough(stop.id, element, at, rig);
  return [...port, ...way, { say: 'looks-like', with: { seen: { line: seen } } }];
}

function wayThrough(id: string, element: RigElement | undefined, at: Value, rig: Rig): Line[] {
  const { before, behind } = neighbours(id, element, rig);
  const names = (elements: readonly RigElement[]): Value => ({
    list: elements.map((one) => ({ name: 'element' as const, id: one.id, of: rig.id })),
  });
  if (!element) return [{ say: 'line-way', with: { before: names(before), behind: names(behind) } }];
  return [
    before.length > 0 ? { say: 'comes-from', with: { at, before: names(before) } } : { say: 'begins', with: { at } },
    behind.length > 0 ? { say: 'goes-to', with: { behind: names(behind) } } : { say: 'ends' },
  ];
}

/** What fuel passes just before and just after; a tank or a rail stands for the line that it is. */
function neighbours(id: string, element: RigElement | undefined, rig: Rig) {
  const [from, to] = element
    ? 'from' in element
      ? [element.from, element.to]
      : [element.node, element.node]
    : [id, id];
  const parts = passedParts(rig);
  const vessels = rig.elements.filter(({ kind }) => kind === 'tank' || kind === 'rail').filter((one) => one.id !== id);
  const at = (node: string) => vessels.filter((one) => ('from' in one ? one.to === node : one.node === node));
  const [source, sink] = [element?.kind === 'rail' ? [] : at(from), at(to)];
  const tank = vessels.filter((one) => one.kind === 'tank' && one.to === from);
  const before = element ? source : tank;
  return {
    before: before.length > 0 ? before : parts.filter((one) => one.to === from),
    behind: sink.some(({ kind }) => kind === 'rail' || element) ? sink : parts.filter((one) => one.from === to),
  };
}
