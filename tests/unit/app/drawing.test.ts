import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { routeLine } from '@/app/_ui/drawing/route-line';
import { loadCatalogue } from '@/content/load';
import { drawingGaps, drawingSchema, type Point } from '@/lib/rig/drawing';

test('every rig has a drawing that shows all of its elements, nodes and ports, and nothing else', () => {
  for (const rig of loadCatalogue().rigs.values()) {
    const drawing = drawingSchema.parse(JSON.parse(readFileSync(`content/drawings/${rig.id}.json`, 'utf8')));
    expect(drawingGaps(drawing, rig)).toEqual([]);
    for (const place of Object.values(drawing.elements))
      if ('within' in place) expect(drawing.elements).toHaveProperty([place.within]);
  }
});

test('ports stand far enough apart to be hit with a finger where the drawing is at its smallest', () => {
  const smallest = 760;
  for (const id of loadCatalogue().rigs.keys()) {
    const { ports, width } = drawingSchema.parse(JSON.parse(readFileSync(`content/drawings/${id}.json`, 'utf8')));
    const places = Object.values(ports).map(({ at }) => at.map((part) => (part * smallest) / width));
    for (const [i, [x = 0, y = 0]] of places.entries())
      for (const [ox = 0, oy = 0] of places.slice(i + 1))
        expect(Math.max(Math.abs(x - ox), Math.abs(y - oy))).toBeGreaterThanOrEqual(44);
  }
});

test.each<[string, Point, Point, Point[], Point[]]>([
  [
    'straight on to a node ahead',
    [10, 10],
    [1, 0],
    [[30, 10]],
    [
      [10, 10],
      [30, 10],
    ],
  ],
  [
    'straight on to a line that crosses ahead',
    [10, 10],
    [1, 0],
    [
      [30, 0],
      [30, 40],
    ],
    [
      [10, 10],
      [30, 10],
    ],
  ],
  [
    'a stub and then down to a line that runs alongside',
    [10, 10],
    [1, 0],
    [
      [0, 50],
      [99, 50],
    ],
    [
      [10, 10],
      [24, 10],
      [24, 50],
    ],
  ],
  [
    'round one corner to a node off to the side',
    [10, 10],
    [1, 0],
    [[60, 40]],
    [
      [10, 10],
      [60, 10],
      [60, 40],
    ],
  ],
  [
    'round one corner from an upright part',
    [10, 10],
    [0, 1],
    [[60, 40]],
    [
      [10, 10],
      [10, 40],
      [60, 40],
    ],
  ],
])('a line leads %s', (_, end, heading, node, line) => {
  expect(routeLine(end, heading, node)).toEqual(line);
});
