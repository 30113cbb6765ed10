import type { Catalogue } from '../../../catalogue';
import type { RigElement } from '../../../rig/element';
import type { Rig } from '../../../rig/rig';
import type { Target } from '../../figure';
import type { Line } from '../../line';
import { flowPathOf, passedParts, type Stop } from '../../shared/flow-path';
import { topicsOfStop } from '../../shared/topics-of-part';
import { nameOfStop } from './name-of-stop';
import { type Screens, seenElement, seenNode } from './seen';

/** Something on a drawing that can be found or named. */
export interface Place {
  what: Target['what'];
  of: string;
  /** Where it sits on the path. */
  stop: Stop;
  name: Line;
  /** What an eye sees there. */
  seen: Line;
  topics: readonly string[];
  /** Whether nothing else on the drawing could pass for it. */
  single: boolean;
}

type Spot = Pick<Place, 'of' | 'stop' | 'single'>;

type PlaceCatalogue = Pick<Catalogue, 'causes' | 'topics'>;

const known = new WeakMap<PlaceCatalogue, Map<string, readonly Place[]>>();

/** Every element, line or port that a rig's drawing shows, in the order in which the fuel meets them; worked out once. */
export function placesOf(
  what: Target['what'],
  rig: Rig,
  screens: Screens,
  catalogue: PlaceCatalogue,
): readonly Place[] {
  const sheets = known.get(catalogue) ?? new Map<string, readonly Place[]>();
  known.set(catalogue, sheets);
  const places = sheets.get(`${rig.id} ${what}`) ?? workOut(what, rig, screens, catalogue);
  sheets.set(`${rig.id} ${what}`, places);
  return places;
}

function workOut(what: Target['what'], rig: Rig, screens: Screens, catalogue: PlaceCatalogue): Place[] {
  const spots = flowPathOf(rig).stops.flatMap((stop) => spotsAt(what, stop, rig));
  return spots.map((spot, index) => {
    const there = { line: seenAt(spot.stop, rig, screens) };
    const seen: Line = { say: `seen-${what}`, with: { port: spot.of, place: index + 1, count: spots.length, there } };
    const port: Line = { say: 'port', with: { port: { name: 'port', id: spot.of, of: rig.id } } };
    const name = what === 'port' ? port : nameOfStop(spot.stop, rig);
    return { ...spot, what, name, seen, topics: topicsOfStop(spot.stop, rig, catalogue) };
  });
}

function spotsAt(what: Target['what'], stop: Stop, rig: Rig): Spot[] {
  if (what === 'port') return portsAt(stop, rig);
  if (what !== stop.what) return [];
  const single = what === 'node' ? !touchesPipe(stop.id, rig) : !hasTwin(stop.id, rig);
  return [{ of: stop.id, stop, single }];
}

/** A pipe is drawn as a line itself, and where it ends is not to be seen. */
function touchesPipe(node: string, rig: Rig): boolean {
  return passedParts(rig).some(({ kind, from, to }) => kind === 'pipe' && (from === node || to === node));
}

/** Whether another part of its kind sits between the same two lines. */
function hasTwin(id: string, rig: Rig): boolean {
  const parts = passedParts(rig);
  const part = parts.find((one) => one.id === id);
  return parts.some(
    (one) => part && one !== part && one.kind === part.kind && one.from === part.from && one.to === part.to,
  );
}

function portsAt(stop: Stop, rig: Rig): Spot[] {
  const ports = rig.ports.filter((port) => (stop.what === 'node' ? port.node === stop.id : port.element === stop.id));
  return [
    ...ports.map(({ id }) => ({ of: id, stop, single: ports.length === 1 })),
    ...(stop.what === 'element' ? leakagePorts(stop, rig) : []),
  ];
}

/** A pump's leakage line is part of the pump's symbol and has no place of its own on the path. */
function leakagePorts(stop: Stop, rig: Rig): Spot[] {
  const pumps = passedParts(rig).filter(({ kind }) => kind === 'high-pressure-pump');
  const leaks = rig.elements.filter(({ kind }) => kind === 'clearance-leak');
  const leak = leaks[pumps.findIndex(({ id }) => id === stop.id)];
  const port = leak && rig.ports.find(({ element }) => element === leak.id);
  return port ? [{ of: port.id, stop, single: pumps.length === 1 }] : [];
}

function seenAt(stop: Stop, rig: Rig, screens: Screens): Line {
  const element = stop.what === 'element' ? elementOf(stop.id, rig) : undefined;
  return element ? seenElement(element, rig, screens) : seenNode(stop.id, rig, screens);
}

function elementOf(id: string, { elements }: Rig): RigElement | undefined {
  return elements.find((element) => element.id === id);
}
