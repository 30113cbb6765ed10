const DAY = 86_400_000;

/** Making one costs more than using it, and a history has thousands of days. */
const formats = new Map<string, Intl.DateTimeFormat>();

/** The day on the calendar of a place, counted from 1 January 1970. */
export function dayIn(timeZone: string, at: Date): number {
  const parts = Object.fromEntries(
    formatIn(timeZone)
      .formatToParts(at)
      .map(({ type, value }) => [type, Number(value)]),
  );
  const { year = 1970, month = 1, day = 1 } = parts;
  return Math.round(Date.UTC(year, month - 1, day) / DAY);
}

/** Noon UTC of a day, which with the zone UTC is shown as that day. */
export function dateOfDay(day: number): Date {
  return new Date((day + 0.5) * DAY);
}

function formatIn(timeZone: string): Intl.DateTimeFormat {
  const known = formats.get(timeZone);
  if (known) return known;
  const made = new Intl.DateTimeFormat('en-US', { timeZone, year: 'numeric', month: 'numeric', day: 'numeric' });
  formats.set(timeZone, made);
  return made;
}
