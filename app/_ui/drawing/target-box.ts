import type { Target } from '@/lib/questions/figure';
import type { Drawing, Point } from '@/lib/rig/drawing';
import type { Rig } from '@/lib/rig/rig';
import { faultRing } from './fault-ring';
import type { Box } from './symbol-box';

/** Half a ring on a line, and half of one round a port. */
const LINE = { x: 13, y: 13 };
const PORT = { x: 30, y: 21 };

/** What a ring round something on a drawing encloses; undefined for what is not drawn. */
export function targetBox({ what, of }: Pick<Target, 'what' | 'of'>, drawing: Drawing, rig: Rig): Box | undefined {
  switch (what) {
    case 'element':
      return faultRing(drawing, rig, of);
    case 'node': {
      const middle = middleOf(drawing.nodes[of] ?? []);
      return middle && around(middle, LINE);
    }
    case 'port': {
      const place = drawing.ports[of];
      return place && around(place.at, PORT);
    }
  }
}

function around([x, y]: Point, half: { x: number; y: number }): Box {
  return [x - half.x, y - half.y, x + half.x, y + half.y];
}

/** The middle of a line's longest stretch, where a ring stands clear of its ends. */
function middleOf(points: readonly Point[]): Point | undefined {
  const [first, ...rest] = points;
  if (!first) return undefined;
  const stretches = rest.map((end, index) => ({ start: points[index] ?? first, end }));
  const longest = stretches.reduce<{ length: number; middle: Point }>(
    (best, { start, end }) => {
      const length = Math.hypot(end[0] - start[0], end[1] - start[1]);
      return length > best.length ? { length, middle: [(start[0] + end[0]) / 2, (start[1] + end[1]) / 2] } : best;
    },
    { length: 0, middle: first },
  );
  return longest.middle;
}
