import { csvHead, csvLines } from '@/app/_server/csv';
import { database } from '@/app/_server/database';
import { download } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { readSettings } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import { streamed } from '@/app/_server/streamed';
import { addingLogEntry, type LogFilter, listLogEntries } from '@/db/queries/log-entries';
import { together } from '@/db/together';
import { entryTeller } from '../entry-teller';
import { readLogNames } from '../log-names';
import { parseLogQuery } from '../parse-log-query';

const AT_ONCE = 500;

const columns = ['at', 'event', 'sentence', 'actorId', 'actor', 'personId', 'person', 'details'];

/** What is asked of the log as a CSV file, all pages of it. */
export const GET = download('/log/export', async (permit, request) => {
  const organizationId = organizationOf(permit);
  const { timeZone } = await readSettings(organizationId);
  const query = Object.fromEntries(new URL(request.url).searchParams);
  const { filter, asked } = parseLogQuery(query, timeZone);
  await together(database(), [addingLogEntry(database(), entryBy(permit, 'log-exported', { details: { ...asked } }))]);
  const pieces = csvOf(organizationId, filter, await entryTeller());
  return streamed(pieces, { type: 'text/csv; charset=utf-8', name: 'faultwright-log.csv' });
});

async function* csvOf(
  organizationId: string,
  filter: LogFilter,
  tellerFor: Awaited<ReturnType<typeof entryTeller>>,
): AsyncGenerator<string> {
  yield csvHead(columns);
  for (let { before } = filter; ; ) {
    const entries = await listLogEntries(database(), organizationId, { ...filter, before }, AT_ONCE);
    const { actor, person, sentence } = tellerFor(await readLogNames(organizationId, entries));
    yield csvLines(
      entries.map((entry) => [
        entry.at.toISOString(),
        entry.event,
        sentence(entry),
        entry.actorId,
        actor(entry),
        entry.personId,
        person(entry),
        JSON.stringify(entry.details),
      ]),
    );
    before = entries.at(-1)?.seq;
    if (before === undefined || entries.length < AT_ONCE) return;
  }
}
