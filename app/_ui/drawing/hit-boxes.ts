import type { Box } from './symbol-box';

/**
 * Boxes to be hit with a finger: each at least `least` wide and high round its middle where there is room, none over
 * another. Where two would overlap, both end half way between, along the axis on which they stand further apart.
 */
export function hitBoxes(boxes: readonly Box[], least: number): Box[] {
  const wide = boxes.map((box) => atLeast(box, least));
  return wide.map((box, index) =>
    wide.reduce((kept, other, otherIndex) => (otherIndex === index ? kept : apart(kept, box, other)), box),
  );
}

function atLeast([left, top, right, bottom]: Box, least: number): Box {
  const [wider, higher] = [Math.max(0, least - (right - left)) / 2, Math.max(0, least - (bottom - top)) / 2];
  return [left - wider, top - higher, right + wider, bottom + higher];
}

/** What is kept of a box that began as `whole` once another has had its half. */
function apart(kept: Box, whole: Box, other: Box): Box {
  if (!overlap(whole, other)) return kept;
  const [[x, y], [otherX, otherY]] = [middle(whole), middle(other)];
  const [left, top, right, bottom] = kept;
  if (Math.abs(otherX - x) >= Math.abs(otherY - y)) {
    const half = (x + otherX) / 2;
    return otherX > x ? [left, top, Math.min(right, half), bottom] : [Math.max(left, half), top, right, bottom];
  }
  const half = (y + otherY) / 2;
  return otherY > y ? [left, top, right, Math.min(bottom, half)] : [left, Math.max(top, half), right, bottom];
}

function middle([left, top, right, bottom]: Box): [number, number] {
  return [(left + right) / 2, (top + bottom) / 2];
}

export function overlap([left, top, right, bottom]: Box, [toLeft, toTop, toRight, toBottom]: Box): boolean {
  return left < toRight && toLeft < right && top < toBottom && toTop < bottom;
}
