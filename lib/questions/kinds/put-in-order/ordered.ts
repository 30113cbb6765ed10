import type { RandomStream } from '../../../random';
import type { Option } from '../../answer';
import { orderShare } from '../../kendall';
import type { DrawnBody } from '../../kind';
import type { Line } from '../../line';
import { drawAgain } from '../../shared/draw-again';
import { shuffled } from '../../shared/shuffled-options';

/** Somebody who leaves the items as they lie gets no more than this share of the pairs. */
const MOST_UNMOVED = 0.5;
const SECONDS_AN_ITEM = 11;

/** What is to be put in order, as it should stand. */
export interface Ordered {
  stem: readonly Line[];
  items: readonly Line[];
  explanation: readonly Line[];
  topics: readonly string[];
  cautionsAfter?: readonly string[];
  features: Readonly<Record<string, number>>;
}

/** The question with its items out of order. */
export function askInOrder(ordered: Ordered, stream: (name: string) => RandomStream, steps: number): DrawnBody {
  const { items, explanation, features, ...rest } = ordered;
  const shown = drawAgain(stream, (named) => {
    const places = shuffled(
      named('lie'),
      items.map((_, place) => place),
    );
    const [right, lying] = [items.map((_, place) => String(place)), places.map(String)];
    return orderShare(right, lying) <= MOST_UNMOVED ? places : undefined;
  });
  const options: Option[] = shown.map((place, at) => ({ id: letter(at), line: items[place] as Line }));
  const order = items.map((_, place) => letter(shown.indexOf(place)));
  return {
    ...rest,
    answer: { form: 'order', items: options },
    key: { form: 'order', order },
    explanation: [...explanation, { say: 'pairs', with: { pairs: (items.length * (items.length - 1)) / 2 } }],
    features,
    guessFloor: 1 / factorial(items.length),
    steps,
    seconds: SECONDS_AN_ITEM * items.length,
  };
}

function letter(place: number): string {
  return String.fromCharCode(97 + place);
}

function factorial(n: number): number {
  return n <= 1 ? 1 : n * factorial(n - 1);
}

/** So many of a list, each as likely, in the list's order. */
export function some<T>(stream: RandomStream, items: readonly T[], count: number): T[] {
  const drawn = new Set(
    shuffled(
      stream,
      items.map((_, place) => place),
    ).slice(0, count),
  );
  return items.filter((_, place) => drawn.has(place));
}

/** A whole number from least to most. */
export function howMany(stream: RandomStream, { least, most }: { least: number; most: number }): number {
  return Math.floor(stream.between(least, most + 1));
}
