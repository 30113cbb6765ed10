import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { AREA_STROKES } from '@/app/_ui/charts/area-strokes';
import { beliefLines } from '@/app/_ui/charts/belief-lines';
import { routeBoxes } from '@/app/_ui/charts/route-boxes';
import { spreadLabels } from '@/app/_ui/charts/spread-labels';
import { type Area, areas } from '@/lib/areas';

describe('labels beside the ends of lines', () => {
  test('stay where they belong while there is room', () => {
    expect(spreadLabels([80, 10, 45], 17, 0, 100)).toEqual([80, 10, 45]);
  });

  test('move apart in order, and up from the bottom', () => {
    expect(spreadLabels([99, 100, 98], 10, 0, 100)).toEqual([90, 100, 80]);
  });

  test('never stand closer than the gap nor change their order, however they lie', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { minLength: 1, maxLength: 9 }), (wanted) => {
        const placed = spreadLabels(wanted, 17, 0, 200);
        const order = wanted.map((_, index) => index).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0));
        const inOrder = order.map((index) => placed[index] ?? 0);
        // The subtractions round in the last digits.
        for (const [index, height] of inOrder.entries())
          expect(height - (inOrder[index - 1] ?? Number.NEGATIVE_INFINITY)).toBeGreaterThanOrEqual(17 - 1e-9);
        expect(Math.min(...placed)).toBeGreaterThanOrEqual(0);
        // Nine labels take 136 of the 200: they all fit.
        expect(Math.max(...placed)).toBeLessThanOrEqual(200 + 1e-9);
      }),
      { endOnFailure: true },
    );
  });
});

const FRAME = { width: 600, height: 300, left: 40, right: 160, top: 10, bottom: 30 };

describe('lines of belief', () => {
  const moments = [shares({ priming: 0.2, filtration: 0.8 }), shares({ priming: 0.95, filtration: 0.04, fuel: 0.01 })];
  const { lines, moments: along, ticks } = beliefLines(moments, FRAME);
  const priming = lines.find(({ area }) => area === 'priming');

  test('run from edge to edge of the frame and from nothing at its foot to all at its head', () => {
    expect(along).toEqual([40, 440]);
    expect(ticks[0]).toEqual({ share: 0, y: 270 });
    expect(ticks.at(-1)).toEqual({ share: 1, y: 10 });
    expect(priming?.points[0]).toEqual({ x: 40, y: 270 - 0.2 * 260 });
  });

  test('hold until the next reading', () => {
    expect(priming?.path).toBe('M40,218L440,218L440,23');
  });

  test('name what ever carried a tenth, and nothing else', () => {
    expect(lines.filter(({ named }) => named).map(({ area }) => area)).toEqual(['priming', 'filtration']);
  });

  test('can be drawn before anything was read', () => {
    const only = beliefLines([shares({ fuel: 1 })], FRAME);
    expect(only.moments).toEqual([240]);
  });
});

test('no two areas share both dash and marker', () => {
  const looks = Object.values(AREA_STROKES).map(
    ({ dash, hollow, marker }) => `${dash} ${hollow} ${String(marker.draw)}`,
  );
  expect(new Set(looks).size).toBe(areas.length);
});

describe('two routes on one axis', () => {
  const yours = [
    { key: 'a', minutes: 30 },
    { key: 'b', minutes: 20 },
    { key: 'b', minutes: 10 },
  ];
  const expert = [{ key: 'b', minutes: 15 }];
  const boxes = routeBoxes(yours, expert, { left: 100, right: 700 });

  test('are as long as their minutes, the longer one to the end', () => {
    expect(boxes.yours.map(({ x, width }) => [x, width])).toEqual([
      [100, 298],
      [400, 198],
      [600, 98],
    ]);
    expect(boxes.expert.map(({ x, width }) => [x, width])).toEqual([[100, 148]]);
  });

  test('tie a check that is in both together once', () => {
    expect(boxes.links).toEqual([{ key: 'b', from: 499, to: 174 }]);
  });

  test('leave an axis where nothing was done', () => {
    const empty = routeBoxes([], [], { left: 0, right: 100 });
    expect(empty.ticks.at(-1)).toEqual({ minutes: 1, x: 100 });
    expect(empty.links).toEqual([]);
  });
});

function shares(some: Partial<Record<Area, number>>): Record<Area, number> {
  return { ...(Object.fromEntries(areas.map((area) => [area, 0])) as Record<Area, number>), ...some };
}
