import { type ExchangedFilter, exchangedChoices } from '@/db/queries/exchanged-questions';
import { topicsInOrder } from '@/lib/topics/topic';
import { catalogue } from '../catalogue';

/** What an address asks to be handed out; what there is not counts as not asked. */
export function exchangedFrom({ searchParams }: URL): ExchangedFilter {
  const which = exchangedChoices.find((known) => known === searchParams.get('which'));
  return { which: which ?? 'live', topic: topicFrom(searchParams.get('topic')) };
}

/** A topic that there is. */
export function topicFrom(id: unknown): string | undefined {
  return topicsInOrder(catalogue()).find((topic) => topic.id === id)?.id;
}
