import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { faultRing } from '@/app/_ui/drawing/fault-ring';
import { labelBox } from '@/app/_ui/drawing/label-lines';
import { routeLine } from '@/app/_ui/drawing/route-line';
import { type Box, SYMBOL_BOX, turnedBox } from '@/app/_ui/drawing/symbol-box';
import { type Drawing, drawingGaps, drawingSchema, type Point } from '@/lib/rig/drawing';
import type { Rig } from '@/lib/rig/rig';
import { catalogue } from '../../support/bench-rig';

/** CSS pixels that a sheet is wide where it is at its smallest; below that it pans. */
const SMALLEST = 760;

describe.each([...catalogue.rigs.values()].map((rig) => [rig.id, rig] as const))('the drawing of %s', (id, rig) => {
  const drawing = drawingSchema.parse(JSON.parse(readFileSync(`content/drawings/${id}.json`, 'utf8')));

  test('shows all of the rig’s elements, nodes and ports, and nothing else', () => {
    expect(drawingGaps(drawing, rig)).toEqual([]);
    for (const place of Object.values(drawing.elements))
      if ('within' in place) expect(drawing.elements).toHaveProperty([place.within]);
  });

  test('has ports far enough apart to be hit with a finger where it is at its smallest', () => {
    const places = Object.values(drawing.ports).map(({ at }) => at.map((part) => (part * SMALLEST) / drawing.width));
    for (const [i, [x = 0, y = 0]] of places.entries())
      for (const [ox = 0, oy = 0] of places.slice(i + 1))
        expect(Math.max(Math.abs(x - ox), Math.abs(y - oy))).toBeGreaterThanOrEqual(44);
  });

  test('keeps labels, symbols and ports on the sheet and off one another', () => {
    const things = [...labelsOf(drawing, rig), ...symbolsOf(drawing, rig), ...portsOf(drawing)];
    const crossing = things.flatMap(([name, box], i) =>
      things.slice(i + 1).flatMap(([other, otherBox]) => (meet(box, otherBox) ? `${name} over ${other}` : [])),
    );
    const outside = things.filter(
      ([, [left, top, right, bottom]]) => left < 0 || top < 0 || right > drawing.width || bottom > drawing.height,
    );
    expect([crossing, outside]).toEqual([[], []]);
  });

  test('lets the ring round a faulty part cross no label', () => {
    const labels = labelsOf(drawing, rig);
    const crossed = rig.elements.flatMap((element) => {
      const ring = faultRing(drawing, rig, element.id);
      if (!ring) return [`${element.id} has no ring`];
      return labels.flatMap(([name, box]) => (meet(ring, box) ? `ring of ${element.id} over ${name}` : []));
    });
    expect(crossed).toEqual([]);
  });
});

type Placed = readonly [string, Box];

function labelsOf(drawing: Drawing, rig: Rig): Placed[] {
  return rig.elements.flatMap((element): Placed[] => {
    const place = drawing.elements[element.id];
    return place && 'at' in place && place.label ? [[`label of ${element.id}`, labelBox(element, place.label)]] : [];
  });
}

function symbolsOf(drawing: Drawing, rig: Rig): Placed[] {
  return rig.elements.flatMap((element): Placed[] => {
    const place = drawing.elements[element.id];
    const box = place && 'at' in place ? SYMBOL_BOX[place.symbol ?? element.kind] : undefined;
    // Injectors hang on their rail and the sensor stands on it.
    const touches = element.kind === 'injectors' || element.kind === 'rail-sensor';
    return place && 'at' in place && box && !touches ? [[element.id, turnedBox(box, place.at, place.turn)]] : [];
  });
}

/** As the style sheet draws a port, at the smallest scale. */
function portsOf({ ports, width }: Drawing): Placed[] {
  const [halfWidth, halfHeight] = [20, 14].map((half) => (half * width) / SMALLEST) as [number, number];
  return Object.entries(ports).map(
    ([
      id,
      {
        at: [x, y],
      },
    ]) => [`port ${id}`, [x - halfWidth, y - halfHeight, x + halfWidth, y + halfHeight]],
  );
}

function meet([left, top, right, bottom]: Box, [otherLeft, otherTop, otherRight, otherBottom]: Box): boolean {
  return left < otherRight && otherLeft < right && top < otherBottom && otherTop < bottom;
}

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
