import type { Area } from '../../areas';
import type { Catalogue } from '../../catalogue';
import type { RigElement } from '../../rig/element';
import type { Rig, Side } from '../../rig/rig';
import { topicsInOrder } from '../../topics/topic';
import type { Stop } from './flow-path';
import { passedParts, pumpAround } from './flow-path';

/** Where suspicion falls on a part that no cause names. */
const AREA_OF_SIDE: Readonly<Record<Side, Area | undefined>> = {
  ambient: undefined,
  suction: 'supply-side',
  low: 'low-pressure-supply',
  high: 'high-pressure',
  return: 'returns',
};

type PartCatalogue = Pick<Catalogue, 'causes' | 'topics'>;

const known = new WeakMap<PartCatalogue, Map<string, readonly string[]>>();

/** Ids of the topics that a part, a line or a port belongs to, by what can go wrong there; worked out once. */
export function topicsOfStop(stop: Stop, rig: Rig, catalogue: PartCatalogue): readonly string[] {
  const places = known.get(catalogue) ?? new Map<string, readonly string[]>();
  known.set(catalogue, places);
  const name = `${rig.id} ${stop.what} ${stop.id}`;
  const topics = places.get(name) ?? workOut(stop, rig, catalogue);
  places.set(name, topics);
  return topics;
}

function workOut({ what, id }: Stop, rig: Rig, catalogue: PartCatalogue): string[] {
  const areas = what === 'element' ? areasOfElement(id, rig, catalogue) : areasOfNode(id, rig, catalogue);
  return topicsInOrder(catalogue).flatMap((topic) =>
    topic.areas.some((area) => areas.includes(area)) ? [topic.id] : [],
  );
}

/** What goes wrong with a line goes wrong with the parts at its ends; a wire ends at a part alone. */
function areasOfNode(node: string, rig: Rig, catalogue: PartCatalogue): Area[] {
  const ends = passedParts(rig).filter(({ from, to }) => from === node || to === node);
  return ends.flatMap(({ id }) => areasOfElement(id, rig, catalogue)).filter((area) => area !== 'electrical-sensing');
}

function areasOfElement(id: string, rig: Rig, catalogue: PartCatalogue): Area[] {
  const element = rig.elements.find((one) => one.id === id);
  if (!element) return [];
  const pump = 'from' in element ? pumpAround(rig, element) : undefined;
  if (pump) return areasOfElement(pump.id, rig, catalogue).filter((area) => area !== 'electrical-sensing');
  // The fuel itself is at fault in a tank that has nothing wrong with it.
  const areas = [...catalogue.causes.values()].flatMap((cause) =>
    cause.element === id && cause.area !== 'fuel' ? [cause.area] : [],
  );
  return areas.length > 0 ? areas : sideOf(element, rig);
}

/** A pump that makes high pressure belongs to it, though it draws from the low side. */
function sideOf(element: RigElement, { nodes }: Rig): Area[] {
  const ends = 'from' in element ? [element.from, element.to] : [element.node];
  const sides = ends.map((end) => nodes.find(({ id }) => id === end)?.side ?? 'ambient');
  const area = AREA_OF_SIDE[sides.includes('high') ? 'high' : (sides[0] ?? 'ambient')];
  return area ? [area] : [];
}
