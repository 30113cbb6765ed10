import { type Derived, type Difficulty, type Response, stepsAround, stepsReached } from './response';

/** Something that was looked for in a hands-on check, with the points that it was given. */
export interface ObservedPoints {
  topic: string;
  outOf: number;
  score: number;
}

/** Of work that is seen once, by one pair of eyes. @source Assumed: nobody has calibrated what instructors look for. */
const DIFFICULTY: Difficulty = { logits: 0, spread: 1 };
/** However many things were looked for on a topic, they are one piece of work seen once. */
const MOST = 4;

/** What somebody was seen doing tells: one response on each topic that was looked at. */
export function evidenceOfObservation(
  { items, unsafe }: { items: readonly ObservedPoints[]; unsafe: boolean },
  response: Response,
): Derived[] {
  const topics = [...new Set(items.map(({ topic }) => topic))].sort();
  return topics.flatMap((topic): Derived[] => {
    const own = items.filter((item) => item.topic === topic);
    const outOf = sum(own, (item) => item.outOf);
    if (outOf === 0) return [];
    const share = Math.min(1, Math.max(0, sum(own, (item) => item.score) / outOf));
    const most = Math.min(MOST, outOf);
    return [
      {
        ...response,
        topic,
        source: 'observation',
        score: stepsReached(share, most),
        model: stepsAround(DIFFICULTY, most),
        safetyEvents: Number(unsafe),
        detail: { findings: [], share, because: 'observed' },
      },
    ];
  });
}

function sum<T>(items: readonly T[], of: (item: T) => number): number {
  return items.reduce((total, item) => total + of(item), 0);
}
