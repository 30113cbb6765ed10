import { scaleLinear, scalePoint } from 'd3-scale';
import { curveStepAfter, line, symbol } from 'd3-shape';
import { type Area, areas } from '@/lib/areas';
import type { AreaShares } from '@/lib/grading/grade';
import { AREA_STROKES } from './area-strokes';
import { spreadLabels } from './spread-labels';

/** An area that never carries as much is drawn in grey and not named. */
const NAMED_FROM = 0.1;
/** From one label to the next. */
const LABEL_GAP = 17;
const MARKER_SIZE = 60;

export interface Frame {
  width: number;
  height: number;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

export interface BeliefLine {
  area: Area;
  /** It carried enough, at some time, to be named. */
  named: boolean;
  path: string;
  dash: string;
  hollow: boolean;
  /** The same marker at every moment. */
  marker: string;
  points: readonly { x: number; y: number }[];
  /** Where its name stands, at the right end. */
  labelY: number;
}

export interface BeliefLines {
  lines: readonly BeliefLine[];
  /** Where each moment stands. */
  moments: readonly number[];
  ticks: readonly { share: number; y: number }[];
}

/**
 * Belief in each area, moment by moment, as steps: it holds until the next reading.
 *
 * @param moments  At the start and after each reading.
 */
export function beliefLines(moments: readonly AreaShares[], frame: Frame): BeliefLines {
  const x = scalePoint<number>()
    .domain(moments.map((_, index) => index))
    .range([frame.left, frame.width - frame.right])
    .padding(moments.length > 1 ? 0 : 0.5);
  const y = scaleLinear([0, 1], [frame.height - frame.bottom, frame.top]);
  const lines = areas.map((area) => lineOf(area, moments, (index) => x(index) ?? frame.left, y));
  return {
    lines: labelled(lines, frame),
    moments: moments.map((_, index) => x(index) ?? frame.left),
    ticks: y.ticks(4).map((share) => ({ share, y: y(share) })),
  };
}

function lineOf(
  area: Area,
  moments: readonly AreaShares[],
  x: (index: number) => number,
  y: (share: number) => number,
): Omit<BeliefLine, 'labelY'> {
  const { dash, hollow, marker } = AREA_STROKES[area];
  // With two causes at work an area may carry a little more than all of it by rounding.
  const points = moments.map((shares, index) => ({ x: x(index), y: y(Math.min(1, shares[area])) }));
  const draw = line<{ x: number; y: number }>(
    (point) => point.x,
    (point) => point.y,
  ).curve(curveStepAfter);
  return {
    area,
    named: moments.some((shares) => shares[area] >= NAMED_FROM),
    path: draw(points) ?? '',
    dash,
    hollow,
    marker: symbol(marker, MARKER_SIZE)() ?? '',
    points,
  };
}

function labelled(lines: readonly Omit<BeliefLine, 'labelY'>[], { top, height, bottom }: Frame): BeliefLine[] {
  const named = lines.filter((one) => one.named);
  const ends = named.map(({ points }) => points.at(-1)?.y ?? top);
  const spread = spreadLabels(ends, LABEL_GAP, top, height - bottom);
  return lines.map((one) => ({ ...one, labelY: spread[named.indexOf(one)] ?? 0 }));
}
