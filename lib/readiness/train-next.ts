import type { SetBody, SetItem } from '../sets/set-body';
import type { Change } from './changes-soon';
import type { Standing } from './intake-outcome';
import { type Missing, missingTopics } from './missing';
import type { RoleProfile } from './profile';

/** A topic to train next, and why. */
export interface Training {
  topic: string;
  because: Missing | 'fades';
  cut: number;
}

/** More topics than one set of training is about. */
const MOST_TOPICS = 3;
/** How far the cases of a set lie around the line, logits. Assumed: near enough to tell, easy enough to learn from. */
const AROUND = 1;

/** What to train next: what is weak or was not shown before what fades. */
export function trainNext(standing: Standing, profile: RoleProfile, changes: readonly Change[]): Training[] {
  const missing = missingTopics(standing, profile).map(({ standing: { topic, cut }, missing: because }) => ({
    topic,
    because,
    cut,
  }));
  const fading = changes.flatMap(({ topic, from }) => {
    const required = profile.topics.find((one) => one.topic === topic);
    return from === 'ready' && required ? [{ topic, because: 'fades' as const, cut: required.cut }] : [];
  });
  return [...missing, ...fading].slice(0, MOST_TOPICS);
}

/** Cases and questions around the line of each topic. @param canBeDrawn  Leaves out what no seed gives. */
export function trainingSet(
  trainings: readonly Pick<Training, 'topic' | 'cut'>[],
  words: Pick<SetBody, 'title' | 'note'>,
  canBeDrawn: (item: SetItem) => boolean,
): SetBody {
  const items = trainings.slice(0, MOST_TOPICS).flatMap(({ topic, cut }, index): SetItem[] => [
    {
      id: `c${index + 1}`,
      kind: 'cases',
      count: 2,
      wishes: { topics: [topic], difficulty: [cut - AROUND, cut + AROUND] },
    },
    { id: `q${index + 1}`, kind: 'questions', count: 4, topic },
  ]);
  return { ...words, items: items.filter(canBeDrawn) };
}
