import type { RandomStream } from '@/lib/random';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** Mornings, so that the longest attempt ends before the shop does; UTC. */
const FROM_HOUR = 8;
const UNTIL_HOUR = 11;

/** Midnights of the days from Monday to Friday in the last weeks, today not among them; UTC. */
export function workingDays(now: Date, weeks: number): Date[] {
  const today = Math.floor(now.getTime() / DAY) * DAY;
  return Array.from({ length: 7 * weeks }, (_, index) => new Date(today - (7 * weeks - index) * DAY)).filter(
    (day) => day.getUTCDay() >= 1 && day.getUTCDay() <= 5,
  );
}

/** Mornings spread evenly over the days, never two on one where there are two days or more for each. */
export function morningsOn(days: readonly Date[], count: number, draw: RandomStream): Date[] {
  return Array.from({ length: count }, (_, index) => {
    const day = days[Math.floor(((index + draw.between(0.5, 1)) / count) * days.length)] ?? new Date(0);
    const minutes = Math.floor(draw.between(FROM_HOUR * 60, UNTIL_HOUR * 60));
    return new Date(day.getTime() + minutes * MINUTE);
  });
}

export function minutesAfter(at: Date, minutes: number): Date {
  return new Date(at.getTime() + minutes * MINUTE);
}
