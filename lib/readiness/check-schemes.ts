import type { Catalogue } from '../catalogue';

/** What schemes of the content name that is not there, a line each. */
export function checkSchemes({
  schemes,
  topics,
  profiles,
}: Pick<Catalogue, 'schemes' | 'topics' | 'profiles'>): string[] {
  return [...schemes.values()].flatMap(({ id, blueprint, profile }) => [
    ...blueprint
      .filter(({ topic }) => !topics.has(topic))
      .map(({ topic }) => `content/schemes/${id}.json: blueprint: there is no topic ${topic}`),
    ...(profiles.has(profile) ? [] : [`content/schemes/${id}.json: profile: there is no profile ${profile}`]),
  ]);
}
