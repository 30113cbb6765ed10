import type { Drawing, Point } from '@/lib/rig/drawing';
import type { Rig } from '@/lib/rig/rig';
import { overlap } from './hit-boxes';
import { labelBox } from './label-lines';
import { type Box, SYMBOL_BOX, turnedBox } from './symbol-box';

/** Radius of a badge, in units of the sheet. */
export const BADGE = 13;

/**
 * Where to set a badge beside each ring: on its edge, where it covers least of names, symbols, rings and other badges.
 *
 * @param names  Whether the names of the parts are written on the sheet.
 */
export function badgePlaces(rings: readonly Box[], drawing: Drawing, rig: Rig, names: boolean): Point[] {
  const printed = [...symbolBoxes(drawing, rig), ...(names ? labelBoxes(drawing, rig) : [])];
  const placed: Point[] = [];
  for (const ring of rings) {
    const others = rings.filter((other) => other !== ring);
    const taken = [...printed, ...others, ...placed.map(badgeBox)];
    const costs = candidates(ring).map((at, index) => ({ at, cost: costOf(at, ring, taken, drawing) + index / 100 }));
    placed.push(costs.reduce((least, candidate) => (candidate.cost < least.cost ? candidate : least)).at);
  }
  return placed;
}

/** Corners first, then the middles of the sides. A small ring has its badge further off, or it could not be seen. */
function candidates([left, top, right, bottom]: Box): Point[] {
  const [x, y] = [(left + right) / 2, (top + bottom) / 2];
  const off = Math.max(0, BADGE - Math.min(right - left, bottom - top) / 4);
  return [
    [right + off, top - off],
    [left - off, top - off],
    [right + off, bottom + off],
    [left - off, bottom + off],
    [x, top - BADGE],
    [right + BADGE, y],
    [x, bottom + BADGE],
    [left - BADGE, y],
  ];
}

function costOf(at: Point, ring: Box, taken: readonly Box[], { width, height }: Drawing): number {
  const box = badgeBox(at);
  const outside = box[0] < 0 || box[1] < 0 || box[2] > width || box[3] > height;
  // The ring's own part is half covered at a corner at most.
  const covered = taken.filter((other) => overlap(box, other) && !overlap(ring, other)).length;
  const within = taken.filter((other) => overlap(box, other) && overlap(ring, other)).length;
  return (outside ? 10 : 0) + covered + 0.5 * within;
}

function badgeBox([x, y]: Point): Box {
  return [x - BADGE, y - BADGE, x + BADGE, y + BADGE];
}

function symbolBoxes(drawing: Drawing, rig: Rig): Box[] {
  return rig.elements.flatMap((element) => {
    const place = drawing.elements[element.id];
    const box = place && 'at' in place ? SYMBOL_BOX[place.symbol ?? element.kind] : undefined;
    return place && 'at' in place && box ? [turnedBox(box, place.at, place.turn)] : [];
  });
}

function labelBoxes(drawing: Drawing, rig: Rig): Box[] {
  return rig.elements.flatMap((element) => {
    const place = drawing.elements[element.id];
    return place && 'at' in place && place.label ? [labelBox(element, place.label)] : [];
  });
}
