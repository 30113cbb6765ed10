import type { Catalogue } from '../../../catalogue';
import type { RandomStream } from '../../../random';
import type { Rig } from '../../../rig/rig';
import type { Line } from '../../line';
import { flowPathOf } from '../../shared/flow-path';
import { topicsOfStop } from '../../shared/topics-of-part';
import { howMany, type Ordered, some } from './ordered';

/** The topic that every part belongs to. */
const EVERYWHERE = 'flow-path-and-components';
/** So many parts of a topic make the question one on it. */
const ENOUGH = 2;

export interface PathWish {
  rig: Rig;
  topic: string | undefined;
  count: { least: number; most: number };
  catalogue: Pick<Catalogue, 'causes' | 'topics'>;
  stream(name: string): RandomStream;
}

/** Parts of a single way of the fuel, so that each two of them have an order. */
export function partsInOrder({ rig, topic, count, catalogue, stream }: PathWish): Ordered {
  const topicsOf = (id: string) => topicsOfStop({ what: 'element', id }, rig, catalogue);
  const wanted = (id: string) => topic === undefined || topic === EVERYWHERE || topicsOf(id).includes(topic);
  const routes = flowPathOf(rig).routes.filter((way) => way.filter(wanted).length >= ENOUGH);
  const route = stream('route').pick(routes);
  const size = Math.min(howMany(stream('count'), count), route.length);
  const must = new Set(some(stream('must'), route.filter(wanted), ENOUGH));
  const rest = route.filter((id) => !must.has(id));
  const others = new Set(some(stream('others'), rest, size - must.size));
  const parts = route.filter((id) => must.has(id) || others.has(id));
  const lines = (ids: readonly string[]) =>
    ids.map((id): Line => ({ say: 'part', with: { part: { name: 'element', id, of: rig.id } } }));
  return {
    stem: [{ say: 'order-path', with: { rig: { name: 'rig', id: rig.id } } }],
    items: lines(parts),
    explanation: [
      { say: 'right-order', with: { way: { line: inTurn(lines(parts)) } } },
      { say: 'whole-way', with: { way: { line: inTurn(lines(route)) } } },
    ],
    topics: [EVERYWHERE, ...oftenIn(parts.map(topicsOf))],
    features: { items: parts.length - count.least, procedure: 0 },
  };
}

/** Topics that enough of the parts belong to. */
function oftenIn(topics: readonly (readonly string[])[]): string[] {
  const all = new Set(topics.flat());
  return [...all].filter((topic) => topics.filter((of) => of.includes(topic)).length >= ENOUGH);
}

/** One after the other. Names have commas of their own, so that a list of them would not read. */
function inTurn([first, ...rest]: readonly Line[]): Line {
  if (!first) return { say: 'then', with: {} };
  return rest.length === 0 ? first : { say: 'then', with: { first: { line: first }, rest: { line: inTurn(rest) } } };
}
