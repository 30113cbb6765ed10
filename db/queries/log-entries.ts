import { and, desc, eq, gte, isNull, lt, type SQL } from 'drizzle-orm';
import type { LogDetails, LogEvent } from '../../lib/accounts/log-events';
import type { Db } from '../client';
import { logEntries } from '../schema';
import type { Statement } from '../together';

export interface NewLogEntry {
  at: Date;
  organizationId: string | null;
  actorId: string | null;
  event: LogEvent;
  personId?: string | null;
  details?: LogDetails;
}

/** Adds to the log, together with what it tells of. */
export function addingLogEntry(db: Db, { details = {}, ...entry }: NewLogEntry): Statement {
  return db.insert(logEntries).values({ ...entry, details });
}

export type LogEntry = typeof logEntries.$inferSelect;

/** Which entries are wanted. What is left out does not matter. */
export interface LogFilter {
  event?: LogEvent | undefined;
  /** Null asks for what nobody signed in did. */
  actorId?: string | null | undefined;
  personId?: string | undefined;
  from?: Date | undefined;
  /** Before this moment. */
  until?: Date | undefined;
  /** Before the entry with this `seq`, where a page ended. */
  before?: number | undefined;
}

/** What an organisation's log says, newest first. */
export async function listLogEntries(
  db: Db,
  organizationId: string,
  filter: LogFilter,
  limit: number,
): Promise<LogEntry[]> {
  return db
    .select()
    .from(logEntries)
    .where(and(eq(logEntries.organizationId, organizationId), ...conditionsOf(filter)))
    .orderBy(desc(logEntries.seq))
    .limit(limit);
}

function conditionsOf({ event, actorId, personId, from, until, before }: LogFilter): (SQL | undefined)[] {
  return [
    event && eq(logEntries.event, event),
    actorId === null ? isNull(logEntries.actorId) : actorId && eq(logEntries.actorId, actorId),
    personId && eq(logEntries.personId, personId),
    from && gte(logEntries.at, from),
    until && lt(logEntries.at, until),
    before && lt(logEntries.seq, before),
  ].map((condition) => condition || undefined);
}
