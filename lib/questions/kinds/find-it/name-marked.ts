import type { RandomStream } from '../../../random';
import type { Rig } from '../../../rig/rig';
import type { DrawnBody } from '../../kind';
import type { Line } from '../../line';
import { flowPathOf } from '../../shared/flow-path';
import { type Choice, shuffled, shuffledOptions } from '../../shared/shuffled-options';
import { explainPlace } from './explain-place';
import type { Place } from './places';

const SECONDS = 25;
const WRONG = 3;

/** Name what is marked. */
export function nameMarked(
  place: Place,
  places: readonly Place[],
  rig: Rig,
  stream: (name: string) => RandomStream,
): Omit<DrawnBody, 'topics'> {
  const others = confusable(place, places, rig, stream('others')).slice(0, WRONG);
  const choices: Choice[] = [
    { line: place.name },
    ...others.map((other) => ({ line: other.name, because: speaksAgainst(other, place, rig) })),
  ];
  const { options, right, because } = shuffledOptions(stream('options'), choices);
  const { what, of } = place;
  return {
    stem: [{ say: `name-marked-${what}` }, { say: 'marked-there', with: { seen: { line: place.seen } } }],
    figure: { figure: 'drawing', rig: rig.id, marked: [{ id: 'a', what, of }], names: false, ports: what === 'port' },
    answer: { form: 'choice', options },
    key: { form: 'choice', right, because },
    explanation: explainPlace(place, rig),
    features: { naming: 1, lines: Number(what === 'node'), ports: Number(what === 'port'), mirror: 0 },
    guessFloor: 1 / options.length,
    steps: 1,
    seconds: SECONDS,
  };
}

/** What people take it for: first a neighbour and a part that looks the same, then whatever is near. */
function confusable(place: Place, places: readonly Place[], rig: Rig, stream: RandomStream): Place[] {
  const at = places.findIndex(({ of }) => of === place.of);
  const apart = places.filter(({ stop }) => stop.id !== place.stop.id);
  const alike = shuffled(
    stream,
    apart.filter((other) => looksLike(other, place, rig)),
  );
  const near = shuffled(stream, apart).sort((a, b) => gap(a, places, at) - gap(b, places, at));
  return [...new Set([...alike.slice(0, 1), ...near])];
}

/** How far along the path, a step either way being one thing. */
function gap({ of }: Place, places: readonly Place[], at: number): number {
  return Math.ceil(Math.abs(places.findIndex((other) => other.of === of) - at) / 2);
}

/** Kinds that are drawn alike. */
const ALIKE: readonly (readonly string[])[] = [
  ['lift-pump', 'gear-pump', 'high-pressure-pump'],
  ['pressure-regulator', 'relief-valve', 'pressure-control-valve'],
];

function looksLike(other: Place, place: Place, { elements }: Rig): boolean {
  const [one, two] = [other, place].map(({ stop }) => elements.find(({ id }) => id === stop.id)?.kind);
  if (!one || !two) return false;
  return one === two || ALIKE.some((group) => group.includes(one) && group.includes(two));
}

function speaksAgainst(other: Place, place: Place, rig: Rig): Line {
  const it = { line: other.name };
  const kinds = [other, place].map(({ stop }) => rig.elements.find(({ id }) => id === stop.id)?.kind);
  if (place.what === 'element' && kinds[0] === 'rail-sensor') return { say: 'against-sensor', with: { it } };
  if (place.what === 'element' && kinds[1] === 'rail-sensor') return { say: 'against-flow', with: { it } };
  return { say: order(other, place, rig), with: { it } };
}

function order(other: Place, place: Place, rig: Rig): string {
  const { leads } = flowPathOf(rig);
  if (leads(other.stop, place.stop)) return 'against-before';
  return leads(place.stop, other.stop) ? 'against-after' : 'against-apart';
}
