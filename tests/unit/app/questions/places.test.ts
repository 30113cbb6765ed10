import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { BADGE, badgePlaces } from '@/app/_ui/drawing/badge-places';
import { hitBoxes, overlap } from '@/app/_ui/drawing/hit-boxes';
import type { Box } from '@/app/_ui/drawing/symbol-box';
import { targetBox } from '@/app/_ui/drawing/target-box';
import { drawingSchema } from '@/lib/rig/drawing';
import { catalogue } from '../../../support/bench-rig';

test('boxes far apart grow to what a finger hits', () => {
  expect(
    hitBoxes(
      [
        [0, 0, 10, 60],
        [200, 0, 210, 10],
      ],
      50,
    ),
  ).toEqual([
    [-20, 0, 30, 60],
    [180, -20, 230, 30],
  ]);
});

test('boxes close together meet half way', () => {
  expect(
    hitBoxes(
      [
        [0, 0, 10, 10],
        [30, 0, 40, 10],
      ],
      50,
    ),
  ).toEqual([
    [-20, -20, 20, 30],
    [20, -20, 60, 30],
  ]);
});

describe.each([...catalogue.rigs.values()].map((rig) => [rig.id, rig] as const))('on the drawing of %s', (id, rig) => {
  const drawing = drawingSchema.parse(JSON.parse(readFileSync(`content/drawings/${id}.json`, 'utf8')));
  const boxOf = (what: 'element' | 'node' | 'port', of: string) => targetBox({ what, of }, drawing, rig);
  const boxesOf = (what: 'element' | 'node' | 'port', things: readonly { id: string }[]) =>
    things.map((thing) => boxOf(what, thing.id)).filter((box) => box !== undefined);
  const drawn = rig.nodes.filter(({ side }) => side !== 'ambient');

  test('every part, line and port that is drawn can be pointed at', () => {
    for (const element of rig.elements) expect(boxOf('element', element.id), element.id).toBeDefined();
    for (const node of drawn) expect(boxOf('node', node.id), node.id).toBeDefined();
    for (const port of rig.ports) expect(boxOf('port', port.id), port.id).toBeDefined();
    expect(boxOf('element', 'no-such-part')).toBeUndefined();
  });

  test.each(['element', 'node', 'port'] as const)('no two places of kind %s are hit at once', (what) => {
    const things = { element: ownPlaces(drawing.elements, rig.elements), node: drawn, port: rig.ports }[what];
    const hits = hitBoxes(boxesOf(what, things), 52);
    const both = hits.flatMap((hit, i) =>
      hits.slice(i + 1).flatMap((other, j) => (overlap(hit, other) ? `${things[i]?.id} ${things[i + 1 + j]?.id}` : [])),
    );
    expect(both).toEqual([]);
    for (const [left, top, right, bottom] of hits) {
      expect(right - left).toBeGreaterThanOrEqual(24);
      expect(bottom - top).toBeGreaterThanOrEqual(24);
    }
  });

  test('a letter stands beside its ring, on the sheet and on no other letter', () => {
    const rings = boxesOf('node', drawn);
    const places = badgePlaces(rings, drawing, rig, true);
    expect(places).toHaveLength(rings.length);
    const badges = places.map(([x, y]): Box => [x - BADGE, y - BADGE, x + BADGE, y + BADGE]);
    for (const [i, badge] of badges.entries()) {
      expect(badge[0]).toBeGreaterThanOrEqual(0);
      expect(badge[2]).toBeLessThanOrEqual(drawing.width);
      expect(badges.slice(i + 1).filter((other) => overlap(badge, other))).toEqual([]);
    }
  });
});

/** Elements that are no part of another's symbol and no leak: what a question may ask for. */
function ownPlaces(
  places: Readonly<Record<string, object>>,
  elements: readonly { id: string; kind: string }[],
): readonly { id: string }[] {
  const leaks = ['air-leak', 'outside-leak', 'clearance-leak'];
  return elements.filter(({ id, kind }) => !('within' in (places[id] ?? {})) && !leaks.includes(kind));
}
