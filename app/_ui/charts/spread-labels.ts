/**
 * Heights of labels as near to where they belong as there is room: in the same order, `gap` apart, between `top` and
 * `bottom`. Where they cannot all fit they keep `gap` and run over the bottom.
 *
 * @param wanted  Heights, downwards, in any order; the answer is in the same.
 */
export function spreadLabels(wanted: readonly number[], gap: number, top: number, bottom: number): number[] {
  const order = wanted.map((_, index) => index).sort((a, b) => at(wanted, a) - at(wanted, b));
  const placed = [...wanted];
  let floor = top;
  for (const index of order) {
    placed[index] = Math.max(at(wanted, index), floor);
    floor = at(placed, index) + gap;
  }
  let ceiling = bottom;
  for (const index of [...order].reverse()) {
    placed[index] = Math.min(at(placed, index), ceiling);
    ceiling = at(placed, index) - gap;
  }
  // Squeezed out at the top: they run over the bottom instead.
  const over = Math.max(0, top - Math.min(...placed));
  return placed.map((height) => height + over);
}

function at(list: readonly number[], index: number): number {
  return list[index] ?? 0;
}
