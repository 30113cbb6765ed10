import type { Askable } from '@/lib/questions/next-asked';
import type { RandomStream } from '@/lib/random';
import { type Choice, chooseOn } from './choose-question';

/** The questions of a check: the topics in turn, in a drawn order. */
export function planCheck(askable: ReadonlyMap<string, Askable>, count: number, draw: RandomStream): Choice[] {
  const topics = [...askable.keys()].map((topic) => ({ topic, at: draw.next() })).sort((a, b) => a.at - b.at);
  const chosen: Choice[] = [];
  for (let place = 0; place < count && topics.length > 0; place++) {
    const { topic } = topics[place % topics.length] ?? { topic: '' };
    const next = chooseOn(
      topic,
      askable,
      chosen.map(({ asked }) => asked),
      draw,
    );
    if (next) chosen.push(next);
  }
  return chosen;
}
