import { expect, test } from 'vitest';
import { solveInPlace } from '@/lib/hydraulics/linear-system';
import { randomStream } from '@/lib/random';

function solved(rows: readonly (readonly number[])[], right: readonly number[], band = right.length - 1) {
  const b = Float64Array.from(right);
  const left = solveInPlace(Float64Array.from(rows.flat()), b, right.length, band);
  return { left, x: [...b] };
}

test('a system worked by hand comes out', () => {
  const { left, x } = solved(
    [
      [2, 1, -1],
      [-3, -1, 2],
      [-2, 1, 2],
    ],
    [8, -11, -3],
  );
  expect(left).toBe(-1);
  [2, 3, -1].forEach((value, index) => {
    expect(x[index]).toBeCloseTo(value, 12);
  });
});

test('a zero on the diagonal is stepped around', () => {
  const { left, x } = solved(
    [
      [0, 2],
      [4, 0],
    ],
    [6, 8],
  );
  expect({ left, x }).toEqual({ left: -1, x: [2, 3] });
});

test('a small pivot is not divided by while a larger one is there', () => {
  // Without exchange, 1e-20 swallows the second equation and x comes out as 0.
  const { x } = solved(
    [
      [1e-20, 1],
      [1, 1],
    ],
    [1, 2],
  );
  expect(x[0]).toBeCloseTo(1, 12);
  expect(x[1]).toBeCloseTo(1, 12);
});

test.each([
  [
    0,
    [
      [0, 1],
      [0, 2],
    ],
  ],
  [
    1,
    [
      [1, 2],
      [2, 4],
    ],
  ],
])('a system that leaves unknown %d open says so', (column, rows) => {
  expect(solved(rows, [1, 1]).left).toBe(column);
});

test('a system with something that is no number is not solved', () => {
  expect(solved([[Number.NaN]], [1]).left).toBe(0);
});

test('nothing to solve is solved', () => {
  expect(solved([], []).left).toBe(-1);
});

test.each([
  { name: 'read as wide as they are', band: 2, outside: 0 },
  { name: 'read as full ones', band: 11, outside: 0 },
  // Room for what exchanged rows bring along must be clear: the band's own width again, to the right.
  { name: 'with something left lying beyond the band', band: 2, outside: 1e9 },
])('banded systems of a rig’s size give back the right-hand side, $name', ({ band, outside }) => {
  const random = randomStream('linear-system', 'entries');
  for (let round = 0; round < 50; round++) {
    const rows = Array.from({ length: 12 }, (_, i) =>
      Array.from({ length: 12 }, (_, j) => (Math.abs(i - j) <= 2 ? random.between(-1, 1) + strength(i, j, round) : 0)),
    );
    const right = Array.from({ length: 12 }, () => random.between(-1, 1));
    const littered = rows.map((row, i) => row.map((entry, j) => (j < i - 2 || j > i + 4 ? outside : entry)));
    const { x } = solved(outside === 0 ? rows : littered, right, band);
    rows.forEach((row, i) => {
      const product = row.reduce((sum, entry, j) => sum + entry * (x[j] ?? 0), 0);
      // One entry dominates each row: a condition number of a few tens leaves thirteen digits.
      expect(product).toBeCloseTo(right[i] ?? 0, 12);
    });
  }
});

/** In even rounds on the diagonal, in odd ones beside it, so that every other row has to be exchanged. */
function strength(i: number, j: number, round: number): number {
  return j === (round % 2 === 0 ? i : i ^ 1) ? 4 : 0;
}
