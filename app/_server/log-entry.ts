import type { NewLogEntry } from '@/db/queries/log-entries';
import type { LogDetails, LogEvent } from '@/lib/accounts/log-events';
import type { Permit } from './permit';

/** What the log is to say of something done by the holder of a permit, in the organisation being worked in, now. */
export function entryBy(
  { session }: Permit,
  event: LogEvent,
  { personId = null, details = {} }: { personId?: string | null; details?: LogDetails } = {},
): NewLogEntry {
  const actor = session?.actor;
  return {
    at: new Date(),
    organizationId: actor?.organizationId ?? null,
    actorId: actor?.personId ?? null,
    event,
    personId,
    details,
  };
}
