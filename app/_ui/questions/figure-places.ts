import type { DrawingView } from '@/app/_server/questions/figure-view';
import type { ShapeView, TargetView } from '@/app/_server/questions/question-view';
import { badgePlaces } from '../drawing/badge-places';
import { hitBoxes } from '../drawing/hit-boxes';
import { onSheet, sheetBox } from '../drawing/sheet-box';
import { targetBox } from '../drawing/target-box';
import type { Place } from './placed-group';

/** CSS pixels that a finger hits. */
const FINGER = 44;
/** CSS pixels that a sheet is wide where it is at its smallest. */
const SMALLEST = 760;
/** More places than this are not numbered on the figure: nine have keys. */
const MOST_NUMBERED = 9;

/** Where the targets of a question lie on its drawing. @throws RangeError for one that the drawing does not show. */
export function drawnPlaces(targets: readonly TargetView[], { rig, drawing, names, ports }: DrawingView): Place[] {
  const rings = targets.map((target) => {
    const box = targetBox(target, drawing, rig);
    if (!box) throw new RangeError(`${target.what} ${target.of} is not on the drawing of ${rig.id}`);
    return box;
  });
  const hits = hitBoxes(rings, (FINGER * drawing.width) / SMALLEST);
  const badges = targets.length <= MOST_NUMBERED ? badgePlaces(rings, drawing, rig, names) : [];
  const sheet = sheetBox(drawing, ports);
  return targets.map(({ id }, index) => {
    const [ring, hit, badge] = [rings[index], hits[index], badges[index]];
    if (!ring || !hit) throw new RangeError(`No place for ${id}`);
    const at = badge && onSheet([...badge, ...badge], sheet);
    return {
      id,
      ring: onSheet(ring, sheet),
      hit: onSheet(hit, sheet),
      ...(at && { badge: { sign: String(index + 1), left: at.left, top: at.top } }),
    };
  });
}

/** Where the areas of a picture lie on it. */
export function shapeAreas(shapes: readonly ShapeView[]): Place[] {
  return shapes.map(({ id, left, top, right, bottom }, index) => {
    const area = { left: share(left), top: share(top), width: share(right - left), height: share(bottom - top) };
    const badge = { sign: String(index + 1), left: area.left, top: area.top };
    return { id, ring: area, hit: area, ...(shapes.length <= MOST_NUMBERED && { badge }) };
  });
}

function share(value: number): string {
  return `${Number((100 * value).toFixed(3))}%`;
}
