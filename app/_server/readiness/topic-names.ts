import { catalogue } from '../catalogue';

/** Names topics; one that is no longer among the content keeps its id. */
export function topicNames(): (topic: string) => string {
  const { topics } = catalogue();
  return (topic) => topics.get(topic)?.text.en.name ?? topic;
}
