import { beforeEach, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { addingLogEntry, type LogFilter, listLogEntries, type NewLogEntry } from '@/db/queries/log-entries';
import { logEntries } from '@/db/schema';
import { together } from '@/db/together';
import { testDatabase } from '../support/test-database';

const noon = (day: number) => new Date(Date.UTC(2026, 0, day, 12));

function anEntry(changes: Partial<NewLogEntry> = {}): NewLogEntry {
  return { at: noon(1), organizationId: 'harbour', actorId: 'ada', event: 'signed-in', personId: 'ada', ...changes };
}

let db: Db;

beforeEach(async () => {
  db = testDatabase();
  const entries = [
    anEntry(),
    anEntry({ at: noon(2), event: 'pin-set', personId: 'ben', details: { from: 'form' } }),
    anEntry({ organizationId: 'college', event: 'pin-set' }),
    anEntry({ at: noon(3), actorId: null, event: 'sign-in-refused', personId: 'ben' }),
    anEntry({ organizationId: null, event: 'organization-added' }),
  ];
  await together(
    db,
    entries.map((entry) => addingLogEntry(db, entry)),
  );
});

async function eventsFor(filter: LogFilter, limit = 10): Promise<string[]> {
  return (await listLogEntries(db, 'harbour', filter, limit)).map(({ event }) => event);
}

test('an organisation reads its own log, newest first, and nothing of another or of the installation', async () => {
  expect(await eventsFor({})).toEqual(['sign-in-refused', 'pin-set', 'signed-in']);
});

test.each<[string, LogFilter, string[]]>([
  ['event', { event: 'pin-set' }, ['pin-set']],
  ['whoever did it', { actorId: 'ada' }, ['pin-set', 'signed-in']],
  ['nobody signed in', { actorId: null }, ['sign-in-refused']],
  ['whom it was done to', { personId: 'ben' }, ['sign-in-refused', 'pin-set']],
  ['the first moment', { from: noon(2) }, ['sign-in-refused', 'pin-set']],
  ['the moment after the last', { until: noon(2) }, ['signed-in']],
  ['both at once', { actorId: 'ada', personId: 'ben' }, ['pin-set']],
  ['what there is none of', { actorId: 'eve' }, []],
])('the log is asked for by %s', async (_, filter, events) => {
  expect(await eventsFor(filter)).toEqual(events);
});

test('a page goes on where the one before ended', async () => {
  const [first] = await listLogEntries(db, 'harbour', {}, 1);
  expect(await eventsFor({ before: first?.seq }, 1)).toEqual(['pin-set']);
});

test('an entry keeps its details', async () => {
  const [entry] = await listLogEntries(db, 'harbour', { event: 'pin-set' }, 1);
  expect(entry).toMatchObject({ at: noon(2), actorId: 'ada', personId: 'ben', details: { from: 'form' } });
});

test('nothing in the log can be changed or removed', async () => {
  expect(() => db.update(logEntries).set({ actorId: 'eve' }).run()).toThrow();
  expect(() => db.delete(logEntries).run()).toThrow();
  expect(await eventsFor({})).toHaveLength(3);
});
