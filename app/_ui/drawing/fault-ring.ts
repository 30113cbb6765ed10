import type { Drawing } from '@/lib/rig/drawing';
import type { Rig } from '@/lib/rig/rig';
import { type Box, SYMBOL_BOX, turnedBox } from './symbol-box';

/** Room between a part and the ring round it; labels stand farther off. */
const CLEARANCE = 6;
/** Half the ring on a part that is only a line. */
const ON_LINE = 16;

/** The ring that points out an element: close round its symbol, or round the one it is part of, or on the middle of its line. */
export function faultRing(drawing: Drawing, rig: Rig, id: string): Box | undefined {
  const place = drawing.elements[id];
  const element = rig.elements.find((candidate) => candidate.id === id);
  if (!place || !element) return undefined;
  if ('within' in place) return faultRing(drawing, rig, place.within);
  if ('via' in place) {
    const middle = place.via[Math.floor(place.via.length / 2)];
    return middle && widened([0, 0, 0, 0], middle, 0, ON_LINE);
  }
  const box = SYMBOL_BOX[place.symbol ?? element.kind];
  return box && widened(box, place.at, place.turn, CLEARANCE);
}

function widened(box: Box, at: readonly [number, number], turn: number, by: number): Box {
  const [left, top, right, bottom] = turnedBox(box, [at[0], at[1]], turn);
  return [left - by, top - by, right + by, bottom + by];
}
