import type { OrganizationSettings } from '@/lib/accounts/settings';

type DateSettings = Pick<OrganizationSettings, 'dateFormat' | 'timeZone'>;

/** A day where the organisation is, as it writes days: `5 Mar 2026`, `Mar 5, 2026` or `2026-03-05`. */
export function shownDate(date: Date, { dateFormat, timeZone }: DateSettings): string {
  const { day, month, monthName, year } = partsOf(date, timeZone);
  if (dateFormat === 'year-month-day') return `${year}-${month}-${day}`;
  return dateFormat === 'day-month-year'
    ? `${Number(day)} ${monthName} ${year}`
    : `${monthName} ${Number(day)}, ${year}`;
}

/** A moment, its day included: `5 Mar 2026, 14:05`. */
export function shownTime(date: Date, settings: DateSettings): string {
  const { hour, minute } = partsOf(date, settings.timeZone);
  return `${shownDate(date, settings)}, ${hour}:${minute}`;
}

interface Parts {
  day: string;
  month: string;
  monthName: string;
  year: string;
  hour: string;
  minute: string;
}

function partsOf(date: Date, timeZone: string): Parts {
  const { numbers, names } = formatsIn(timeZone);
  const parts = Object.fromEntries(numbers.formatToParts(date).map(({ type, value }) => [type, value]));
  const { day = '', month = '', year = '', hour = '', minute = '' } = parts;
  return { day, month, monthName: names.format(date), year, hour, minute };
}

interface Formats {
  numbers: Intl.DateTimeFormat;
  names: Intl.DateTimeFormat;
}

/** Making one costs more than using it, and a list shows hundreds of dates. */
const made = new Map<string, Formats>();

function formatsIn(timeZone: string): Formats {
  const known = made.get(timeZone);
  if (known) return known;
  const formats = {
    numbers: new Intl.DateTimeFormat('en-US', {
      timeZone,
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
    }),
    names: new Intl.DateTimeFormat('en-US', { timeZone, month: 'short' }),
  };
  made.set(timeZone, formats);
  return formats;
}
