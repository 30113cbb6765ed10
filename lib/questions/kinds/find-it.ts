import { z } from 'zod';
import type { Target } from '../figure';
import { type Draw, defineKind } from '../kind';
import { nameMarked } from './find-it/name-marked';
import { type Place, placesOf } from './find-it/places';
import { pointAt } from './find-it/point-at';
import { seenFrom, standSchema } from './find-it/seen-from';

/** The topic that every part belongs to. */
const EVERYWHERE = 'flow-path-and-components';

const rangesSchema = z.strictObject({
  /** How often each is asked, relative to the others. */
  ways: z.strictObject({ point: z.number().positive(), name: z.number().positive(), mirror: z.number().positive() }),
  sorts: z.strictObject({ element: z.number().positive(), node: z.number().positive(), port: z.number().positive() }),
  /** Parts that are drawn as a screen, by rig. */
  screens: z.record(z.string(), z.array(z.string())),
  stands: z.array(standSchema).min(2),
});

type Ranges = z.infer<typeof rangesSchema>;

/** Find what is named on a rig's drawing, name what is marked there, and tell sides as seen from the flywheel. */
export const findIt = defineKind({
  id: 'find-it',
  ranges: rangesSchema,
  topics: [
    EVERYWHERE,
    'suction-tank-and-air',
    'priming-and-lift-pump',
    'low-pressure-supply-and-regulation',
    'filtration',
    'metering-and-rail-control',
    'high-pressure-and-leakage',
    'returns-and-temperature',
    'electrical-supply-sensors-and-codes',
  ],
  make(draw) {
    const { ranges, rig, stream } = draw;
    const anywhere = draw.topic === undefined || draw.topic === EVERYWHERE;
    const ways = anywhere ? (['point', 'name', 'mirror'] as const) : (['point', 'name'] as const);
    const way = stream('way').pick(ways, (one) => ranges.ways[one]);
    if (way === 'mirror') return { ...seenFrom(ranges.stands, rig, stream), topics: [EVERYWHERE] };
    const { place, places } = drawPlace(draw, anywhere);
    const body = way === 'point' ? pointAt(place, places, rig) : nameMarked(place, places, rig, stream);
    return { ...body, topics: [EVERYWHERE, ...place.topics] };
  },
});

/** A place that nothing else could pass for, with all others of its sort. */
function drawPlace({ rig, topic, ranges, catalogue, stream }: Draw<Ranges>, anywhere: boolean) {
  const sorts = (['element', 'node', 'port'] as const).map((what) => {
    const places = placesOf(what, rig, ranges.screens, catalogue);
    const wanted = places.filter(({ single, topics }) => single && (anywhere || topics.includes(topic ?? '')));
    return { what, places, wanted };
  });
  const possible = sorts.filter(({ wanted }) => wanted.length > 0);
  const sort = stream('sort').pick(possible, ({ what }: { what: Target['what'] }) => ranges.sorts[what]);
  const place: Place = stream('place').pick(sort.wanted);
  return { place, places: sort.places };
}
