import type { RigElement } from '../../rig/element';
import { elementOfKind, type Rig } from '../../rig/rig';

/** An element that fuel flows through. */
export type Part = Extract<RigElement, { from: string }>;
/** Something that stands on the way of the fuel. */
export interface Stop {
  what: 'element' | 'node';
  id: string;
}

/** How a rig's parts follow one another as the fuel meets them, first from the tank. */
export interface FlowPath {
  /** Parts and lines in that order; side by side where the path divides. */
  stops: readonly Stop[];
  /** Whether fuel that has passed `before` can come to `after` without going back to where it was. */
  leads(before: Stop, after: Stop): boolean;
  /** Ways from the tank to the cylinders, or back to the tank, part by part; none goes round a pump by its bypass. */
  routes: readonly (readonly string[])[];
}

/** Leaks are no parts, wanted or not. */
const LEAKS: readonly RigElement['kind'][] = ['air-leak', 'outside-leak', 'clearance-leak'];
const PUMPS: readonly RigElement['kind'][] = ['lift-pump', 'gear-pump', 'high-pressure-pump'];

const known = new WeakMap<Rig, FlowPath>();

/** A rig's flow path, worked out once. */
export function flowPathOf(rig: Rig): FlowPath {
  const found = known.get(rig) ?? workOut(rig);
  known.set(rig, found);
  return found;
}

/** Whether a part stands on the drawing for itself and is no place where something may leak. */
export function isPart({ kind }: RigElement): boolean {
  return !LEAKS.includes(kind);
}

/** Parts that fuel flows through, without the tank, where it all begins. */
export function passedParts({ elements }: Rig): Part[] {
  return elements.filter((one): one is Part => 'from' in one && isPart(one) && one.kind !== 'tank');
}

/** The pump that a part leads round. */
export function pumpAround(rig: Rig, part: Part): Part | undefined {
  if (PUMPS.includes(part.kind)) return undefined;
  return passedParts(rig).find(({ kind, from, to }) => PUMPS.includes(kind) && from === part.from && to === part.to);
}

function workOut(rig: Rig): FlowPath {
  const source = elementOfKind(rig, 'tank');
  const onward = forwardParts(rig, source.to);
  const rank = ranker(onward);
  const places = [
    ...rig.nodes.flatMap(({ id, side }) =>
      side === 'ambient' ? [] : [{ what: 'node' as const, id, at: 2 * rank(id) }],
    ),
    ...rig.elements
      .filter(isPart)
      .map((element) => ({ what: 'element' as const, id: element.id, at: placeOf(element, rank) })),
  ];
  return {
    stops: places.sort((a, b) => a.at - b.at).map(({ what, id }) => ({ what, id })),
    leads: (before, after) => leads(rig, onward, before, after),
    routes: routesFrom(rig, source.to, [source.id]),
  };
}

function placeOf(element: RigElement, rank: (node: string) => number): number {
  if (element.kind === 'tank') return -1;
  return 'from' in element ? 2 * rank(element.from) + 1 : 2 * rank(element.node) + 0.5;
}

/** All parts but those that lead back to where the fuel has been, such as a regulator's way to the pump's inlet. */
function forwardParts(rig: Rig, start: string): Part[] {
  const parts = passedParts(rig);
  const forward: Part[] = [];
  const done = new Set<string>();
  const visit = (node: string, way: readonly string[]) => {
    if (done.has(node)) return;
    done.add(node);
    for (const part of parts.filter(({ from }) => from === node)) {
      if ([...way, node].includes(part.to)) continue;
      forward.push(part);
      visit(part.to, [...way, node]);
    }
  };
  visit(start, []);
  return forward;
}

/** Most parts between the start and a node. */
function ranker(onward: readonly Part[]): (node: string) => number {
  const ranks = new Map<string, number>();
  const rank = (node: string): number => {
    const before = onward.filter(({ to }) => to === node).map(({ from }) => 1 + (ranks.get(from) ?? rank(from)));
    const found = Math.max(0, ...before);
    ranks.set(node, found);
    return found;
  };
  return rank;
}

function leads(rig: Rig, onward: readonly Part[], before: Stop, after: Stop): boolean {
  if (before.what === after.what && before.id === after.id) return false;
  // What goes back never leads on.
  if (passedParts(rig).some(({ id }) => before.what === 'element' && id === before.id) && !has(onward, before.id))
    return false;
  const [start, goal] = [endOf(before, rig, 'to'), endOf(after, rig, 'from')];
  const reaches = (node: string): boolean =>
    node === goal || onward.some(({ from, to }) => from === node && reaches(to));
  return start !== undefined && reaches(start);
}

function has(parts: readonly Part[], id: string): boolean {
  return parts.some((part) => part.id === id);
}

/** The node at an end of a part, or where a vessel or a sensor sits. */
function endOf({ what, id }: Stop, { elements }: Rig, end: 'from' | 'to'): string | undefined {
  if (what === 'node') return id;
  const element = elements.find((one) => one.id === id);
  return element && ('from' in element ? element[end] : element.node);
}

function routesFrom(rig: Rig, node: string, way: readonly string[], seen: readonly string[] = []): string[][] {
  const vessel = rig.elements.find((element) => element.kind === 'rail' && element.node === node);
  const here = vessel ? [...way, vessel.id] : [...way];
  const next = passedParts(rig).filter((part) => part.from === node && !pumpAround(rig, part));
  if (next.length === 0) return [here];
  return next.flatMap((part) => {
    // The return line ends where everything began.
    if (part.to === elementOfKind(rig, 'tank').to) return [[...here, part.id]];
    if ([...seen, node].includes(part.to)) return [];
    return routesFrom(rig, part.to, [...here, part.id], [...seen, node]);
  });
}
