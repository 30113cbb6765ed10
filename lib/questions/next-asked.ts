import type { RandomStream } from '../random';
import type { QuestionKindId } from './question';

/** What can be asked: kinds that draw anew each time, and questions that somebody wrote, by their ids. */
export interface Askable {
  kinds: readonly QuestionKindId[];
  written: readonly string[];
}

/** What was asked, whatever its seed. */
export type Asked = { kind: QuestionKindId } | { written: string };

/**
 * What to ask next, so that a sitting stays varied: what was asked least in it and not last, by chance where several are
 * alike. Written questions together count as one kind; none of them comes twice where something else is left.
 *
 * @param before  What was asked in the sitting, in order.
 * @returns undefined where there is nothing to ask.
 */
export function nextAsked(
  { kinds, written }: Askable,
  before: readonly Asked[],
  draw: RandomStream,
): Asked | undefined {
  const fresh = written.filter((id) => !before.some((asked) => 'written' in asked && asked.written === id));
  const offered = fresh.length > 0 || kinds.length > 0 ? fresh : written;
  const sources: Source[] = [...kinds, ...(offered.length > 0 ? ([WRITTEN] as const) : [])];
  const last = before.at(-1);
  const others = sources.filter((source) => !last || source !== sourceOf(last));
  const possible = leastAsked(others.length > 0 ? others : sources, before);
  if (possible.length === 0) return undefined;
  const source = draw.pick(possible);
  return source === WRITTEN ? { written: draw.pick(offered) } : { kind: source };
}

const WRITTEN = 'written';
type Source = QuestionKindId | typeof WRITTEN;

function sourceOf(asked: Asked): Source {
  return 'kind' in asked ? asked.kind : WRITTEN;
}

function leastAsked(sources: readonly Source[], before: readonly Asked[]): Source[] {
  const times = (source: Source) => before.filter((asked) => sourceOf(asked) === source).length;
  const least = Math.min(...sources.map(times));
  return sources.filter((source) => times(source) === least);
}
