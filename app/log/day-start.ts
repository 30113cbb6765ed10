/** A calendar day. */
export interface Day {
  year: number;
  /** From 1. */
  month: number;
  day: number;
}

/** A day written like `2026-03-05`; undefined where there is no such day. */
export function parseDay(text: string): Day | undefined {
  const [, year = 0, month = 0, day = 0] = (/^(\d{4})-(\d\d)-(\d\d)$/.exec(text) ?? []).map(Number);
  const date = new Date(Date.UTC(year, month - 1, day));
  const exists = year > 0 && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  return exists ? { year, month, day } : undefined;
}

/**
 * When a day begins on the clock of a place: at midnight, or where the clock is put forward over midnight, at that moment.
 *
 * @param later  Counts this many days on.
 */
export function dayStart({ year, month, day }: Day, timeZone: string, later = 0): Date {
  const midnight = Date.UTC(year, month - 1, day + later);
  const guess = midnight - offsetAt(midnight, timeZone);
  const start = midnight - offsetAt(guess, timeZone);
  return new Date(offsetAt(start, timeZone) === offsetAt(guess, timeZone) ? start : Math.max(start, guess));
}

/** How far a place's clock is ahead of UTC at a moment, ms. */
function offsetAt(moment: number, timeZone: string): number {
  const format = new Intl.DateTimeFormat('en-US', {
    timeZone,
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
    hourCycle: 'h23',
  });
  const parts = Object.fromEntries(format.formatToParts(moment).map(({ type, value }) => [type, Number(value)]));
  const { year = 0, month = 1, day = 1, hour = 0, minute = 0, second = 0 } = parts;
  return Date.UTC(year, month - 1, day, hour, minute, second) - moment;
}
