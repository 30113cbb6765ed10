import { scaleLinear } from 'd3-scale';

/** One step of a route, by what it is told apart from others by. */
export interface Stretch {
  key: string;
  minutes: number;
}

/** A stretch of the time line. */
export interface RouteBox extends Stretch {
  x: number;
  width: number;
}

export interface RouteBoxes {
  yours: readonly RouteBox[];
  expert: readonly RouteBox[];
  ticks: readonly { minutes: number; x: number }[];
  /** Steps of the same key in both routes, from middle to middle. */
  links: readonly { key: string; from: number; to: number }[];
}

/** Between two boxes, so that their edges do not run together. */
const GAP = 2;
const NARROWEST = 3;

/** Two routes laid along one axis of shop minutes, between `left` and `right`. */
export function routeBoxes(
  yours: readonly Stretch[],
  expert: readonly Stretch[],
  { left, right }: { left: number; right: number },
): RouteBoxes {
  const longest = Math.max(total(yours), total(expert), 1);
  const x = scaleLinear([0, longest], [left, right]);
  const [above, below] = [boxesOf(yours, x), boxesOf(expert, x)];
  return { yours: above, expert: below, ticks: ticksOf(x), links: linksOf(above, below) };
}

type Scale = (minutes: number) => number;

function total(stretches: readonly Stretch[]): number {
  return stretches.reduce((sum, { minutes }) => sum + minutes, 0);
}

function boxesOf(stretches: readonly Stretch[], x: Scale): RouteBox[] {
  let begun = 0;
  return stretches.map((stretch) => {
    const [start, end] = [x(begun), x(begun + stretch.minutes)];
    begun += stretch.minutes;
    return { ...stretch, x: start, width: Math.max(NARROWEST, end - start - GAP) };
  });
}

function ticksOf(x: ReturnType<typeof scaleLinear<number, number>>): { minutes: number; x: number }[] {
  return x.ticks(6).map((minutes) => ({ minutes, x: x(minutes) }));
}

/** The first step of a key in each route; steps after it repeat it. */
function linksOf(above: readonly RouteBox[], below: readonly RouteBox[]): { key: string; from: number; to: number }[] {
  return below.flatMap(({ key, x, width }) => {
    const same = above.find((box) => box.key === key);
    return same ? [{ key, from: same.x + same.width / 2, to: x + width / 2 }] : [];
  });
}
