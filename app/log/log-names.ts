import { database } from '@/app/_server/database';
import type { LogEntry } from '@/db/queries/log-entries';
import { listClassNames, listNames } from '@/db/queries/names';

/** Names by id, as they are now: people and classes of the organisation whose log is read. */
export type LogNames = ReadonlyMap<string, string>;

/** Names of everybody and everything that entries speak of, where the organisation still has them. */
export async function readLogNames(
  organizationId: string,
  entries: readonly LogEntry[],
  others: readonly string[] = [],
): Promise<LogNames> {
  const people = [...new Set([...entries.flatMap(({ actorId, personId }) => [actorId, personId]), ...others])];
  const named = [...new Set(entries.flatMap(({ details }) => Object.values(details).flat()))].filter(
    (value) => typeof value === 'string',
  );
  const ids = [...people.filter((id) => id !== null), ...named];
  const found = [
    ...(await listNames(database(), organizationId, ids)),
    ...(await listClassNames(database(), organizationId, named)),
  ];
  return new Map(found.map(({ id, name }) => [id, name]));
}
