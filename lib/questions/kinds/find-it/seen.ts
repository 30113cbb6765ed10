import type { RigElement } from '../../../rig/element';
import type { Rig, Side } from '../../../rig/rig';
import type { Line, Value } from '../../line';
import { passedParts } from '../../shared/flow-path';

/** Elements of a rig that are drawn as a screen, whatever their kind. */
export type Screens = Readonly<Record<string, readonly string[]>>;

/** A part as an eye sees it: its symbol, never its name, with its side and what stands before it and behind it. */
export function seenElement(element: RigElement, rig: Rig, screens: Screens): Line {
  const symbol: Value = { line: symbolOf(element, rig, screens) };
  if (element.kind === 'tank') return { say: 'seen-first', with: { symbol } };
  const [from, to] = 'from' in element ? [element.from, element.to] : [element.node, element.node];
  const [side, next] = [sideOf(from, rig), sideOf(to, rig)];
  const before = symbols(cameFrom(from, element, rig), rig, screens);
  if (element.kind === 'rail-sensor') return { say: 'seen-sensor', with: { symbol, side, before } };
  const behind = symbols(goesTo(to, element, rig), rig, screens);
  return { say: 'seen-part', with: { symbol, side, next: next === side ? 'same' : next, before, behind } };
}

/** A line as an eye sees it. */
export function seenNode(node: string, rig: Rig, screens: Screens): Line {
  const before = symbols(arrivals(node, rig), rig, screens);
  const behind = symbols(goesTo(node, undefined, rig), rig, screens);
  return { say: 'seen-line', with: { side: sideOf(node, rig), before, behind } };
}

function symbolOf({ id, kind }: RigElement, rig: Rig, screens: Screens): Line {
  return { say: `symbol-${screens[rig.id]?.includes(id) ? 'screen' : kind}` };
}

function sideOf(node: string, { nodes }: Rig): Side {
  return nodes.find(({ id }) => id === node)?.side ?? 'ambient';
}

/** What fuel leaves into a line: a vessel that stands there counts before all else, being what an eye meets first. */
function cameFrom(node: string, element: RigElement, rig: Rig): RigElement[] {
  const vessel = element.kind === 'rail' || element.kind === 'rail-sensor' ? undefined : vesselAt(node, rig);
  return vessel ? [vessel] : arrivals(node, rig);
}

function goesTo(node: string, element: RigElement | undefined, rig: Rig): RigElement[] {
  const vessel = element?.kind === 'rail' ? undefined : vesselAt(node, rig);
  const leaving = passedParts(rig).filter(({ from }) => from === node);
  return vessel && (vessel.kind === 'rail' || element) ? [vessel] : leaving;
}

function arrivals(node: string, rig: Rig): RigElement[] {
  const tank = rig.elements.find((element) => element.kind === 'tank' && element.to === node);
  return tank ? [tank] : passedParts(rig).filter(({ to }) => to === node);
}

/** The tank or the rail whose line this is. */
function vesselAt(node: string, { elements }: Rig): RigElement | undefined {
  return elements.find(
    (element) => (element.kind === 'tank' && element.to === node) || (element.kind === 'rail' && element.node === node),
  );
}

/** Each symbol once. */
function symbols(elements: readonly RigElement[], rig: Rig, screens: Screens): Value {
  const said = new Map(elements.map((element) => symbolOf(element, rig, screens)).map((line) => [sayOf(line), line]));
  if (said.size === 0) return { line: { say: 'symbol-none' } };
  return { list: [...said.values()].map((line) => ({ line })) };
}

function sayOf(line: Line): string {
  return 'say' in line ? line.say : '';
}
