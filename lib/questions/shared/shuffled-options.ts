import type { RandomStream } from '../../random';
import type { Option } from '../answer';
import type { Line } from '../line';

/** An option before it has its place: the right ones have nothing that speaks against them. */
export interface Choice {
  line: Line;
  because?: Line;
}

/** Options in a drawn order, with ids a, b, c… as they are shown, and the key to them. */
export function shuffledOptions(stream: RandomStream, choices: readonly Choice[]) {
  const placed = shuffled(stream, choices).map((choice, place) => ({ id: String.fromCharCode(97 + place), choice }));
  const options: Option[] = placed.map(({ id, choice }) => ({ id, line: choice.line }));
  const wrong = placed.flatMap(({ id, choice }) => (choice.because ? [[id, choice.because] as const] : []));
  const right = placed.flatMap(({ id, choice }) => (choice.because ? [] : [id]));
  return { options, right, because: Object.fromEntries(wrong) };
}

/** The items in another order, every order as likely. @source Fisher and Yates, as Knuth gives it (from memory). */
export function shuffled<T>(stream: RandomStream, items: readonly T[]): T[] {
  const left = [...items];
  return items.map(() => {
    const [drawn] = left.splice(Math.floor(stream.next() * left.length), 1);
    return drawn as T;
  });
}
