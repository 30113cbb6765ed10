import type { VersionFilter } from '@/db/queries/written-questions';
import { versionStates } from '@/db/schema/written-questions';
import { writtenForms } from '@/lib/questions/written/written-forms';

type Asked = Readonly<Record<string, string | string[] | undefined>>;

/** What the address of the list asks for; what there is not counts as not asked. */
export function filterFrom({ state, topic, form, search }: Asked, topics: readonly string[]): VersionFilter {
  return {
    state: versionStates.find((known) => known === state),
    topic: topics.find((known) => known === topic),
    form: writtenForms.find((known) => known === form),
    search: typeof search === 'string' && search.trim() !== '' ? search.trim().slice(0, 80) : undefined,
  };
}

/** The address of the list with a filter. */
export function addressOf(filter: VersionFilter): string {
  const asked = Object.entries(filter).filter((entry): entry is [string, string] => typeof entry[1] === 'string');
  return asked.length === 0 ? '/questions' : `/questions?${new URLSearchParams(asked)}`;
}
