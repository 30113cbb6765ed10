import type { Rig } from '../../../rig/rig';
import type { Line } from '../../line';
import { flowPathOf, passedParts, type Stop } from '../../shared/flow-path';

/** A part by its name, a line by the parts that it joins on the way to the cylinders. */
export function nameOfStop({ what, id }: Stop, rig: Rig): Line {
  const named = (element: string) => ({ name: 'element' as const, id: element, of: rig.id });
  if (what === 'element') return { say: 'part', with: { part: named(id) } };
  const { from, to } = endsOf(id, rig);
  return { say: 'line-between', with: { from: named(from), to: named(to) } };
}

/** @throws RangeError for a line that leads from nowhere or to nowhere. */
function endsOf(node: string, rig: Rig): { from: string; to: string } {
  const injectors = { what: 'element' as const, id: rig.elements.find(({ kind }) => kind === 'injectors')?.id ?? '' };
  const parts = passedParts(rig);
  const source = rig.elements.find((element) => element.kind === 'tank' && element.to === node);
  const vessel = rig.elements.find((element) => element.kind === 'rail' && element.node === node);
  const onward = parts.filter(({ from }) => from === node);
  const { leads } = flowPathOf(rig);
  const from = source ?? parts.find(({ to }) => to === node);
  const to = vessel ?? onward.find(({ id }) => leads({ what: 'element', id }, injectors)) ?? onward[0];
  if (!from || !to) throw new RangeError(`The line ${node} of ${rig.id} joins nothing`);
  return { from: from.id, to: to.id };
}
