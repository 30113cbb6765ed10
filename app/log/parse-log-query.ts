import type { LogFilter } from '@/db/queries/log-entries';
import { type LogEvent, logEvents } from '@/lib/accounts/log-events';
import { dayStart, parseDay } from './day-start';

/** Asks for what nobody signed in did. */
export const CONSOLE = 'console';

export const logFields = ['event', 'actor', 'person', 'from', 'to', 'before'] as const;
export type LogField = (typeof logFields)[number];

/** What the address asks of the log. */
export interface LogQuery {
  filter: LogFilter;
  /** What was understood, as it stands in the address. */
  asked: Partial<Record<LogField, string>>;
  /** What was not, and counts for nothing. */
  ignored: readonly LogField[];
}

type Raw = Readonly<Record<string, string | readonly string[] | undefined>>;

/** Reads which entries are asked for. Days are those of the organisation's place; the last one counts whole. */
export function parseLogQuery(raw: Raw, timeZone: string): LogQuery {
  const asked: LogQuery['asked'] = {};
  const ignored: LogField[] = [];
  let filter: LogFilter = {};
  for (const field of logFields) {
    const value = raw[field];
    if (value === undefined || value === '') continue;
    const part = typeof value === 'string' ? readers[field](value, timeZone) : undefined;
    if (typeof value !== 'string' || !part) ignored.push(field);
    else {
      asked[field] = value;
      filter = { ...filter, ...part };
    }
  }
  return { filter, asked, ignored };
}

const readers: Record<LogField, (value: string, timeZone: string) => LogFilter | undefined> = {
  event: (value) => (isEvent(value) ? { event: value } : undefined),
  actor: (value) => (isId(value) ? { actorId: value === CONSOLE ? null : value } : undefined),
  person: (value) => (isId(value) ? { personId: value } : undefined),
  from: (value, timeZone) => {
    const day = parseDay(value);
    return day && { from: dayStart(day, timeZone) };
  },
  to: (value, timeZone) => {
    const day = parseDay(value);
    return day && { until: dayStart(day, timeZone, 1) };
  },
  before: (value) => (/^[1-9]\d{0,14}$/.test(value) ? { before: Number(value) } : undefined),
};

function isEvent(value: string): value is LogEvent {
  return (logEvents as readonly string[]).includes(value);
}

function isId(value: string): boolean {
  return /^[\w-]{1,80}$/.test(value);
}

/** The address of the log, or of its file, for what is asked. */
export function logAddress(path: '/log' | '/log/export', asked: LogQuery['asked']): string {
  const query = new URLSearchParams(asked).toString();
  return query ? `${path}?${query}` : path;
}
