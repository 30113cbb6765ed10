import type { Catalogue } from '../catalogue';

/** What of the role profiles names a topic that there is not. A sentence each, for whoever writes content. */
export function checkProfiles({ profiles, topics }: Pick<Catalogue, 'profiles' | 'topics'>): string[] {
  return [...profiles.values()].flatMap((profile) =>
    [...profile.topics, ...(profile.handsOn ?? [])]
      .filter(({ topic }) => !topics.has(topic))
      .map(({ topic }) => `content/profiles/${profile.id}.json: unknown topic ${topic}`),
  );
}
