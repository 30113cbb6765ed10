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
