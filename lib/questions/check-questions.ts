import type { Catalogue } from '../catalogue';
import { kinds } from './kinds';

/** What content of the questions names that is not there, or has in the wrong shape. */
export function checkQuestions({ questions, topics }: Pick<Catalogue, 'questions' | 'topics'>): string[] {
  return [...kinds.values()].flatMap((kind) => {
    const content = questions.get(kind.id);
    if (!content) return [`content/questions: ${kind.id}.json is missing`];
    const parsed = kind.ranges.safeParse(content.ranges);
    const shape = parsed.success ? [] : parsed.error.issues;
    return [
      ...shape.map(({ path, message }) => `content/questions/${kind.id}.json: ranges.${path.join('.')}: ${message}`),
      ...kind.topics
        .filter((topic) => !topics.has(topic))
        .map((topic) => `content/questions/${kind.id}.json: no topic ${topic}`),
    ];
  });
}
