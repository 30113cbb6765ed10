import { expect, test } from 'vitest';
import { shownDate, shownTime } from '@/app/_ui/shown-date';

const lateInMarch = new Date(Date.UTC(2026, 2, 5, 23, 7));

test.each([
  ['day-month-year', '5 Mar 2026'],
  ['month-day-year', 'Mar 5, 2026'],
  ['year-month-day', '2026-03-05'],
] as const)('a day is written %s', (dateFormat, day) => {
  expect(shownDate(lateInMarch, { dateFormat, timeZone: 'UTC' })).toBe(day);
});

test('a moment is told on the clock of the organisation’s place, which may be another day', () => {
  const dateFormat = 'year-month-day';
  expect(shownTime(lateInMarch, { dateFormat, timeZone: 'UTC' })).toBe('2026-03-05, 23:07');
  expect(shownTime(lateInMarch, { dateFormat, timeZone: 'Pacific/Auckland' })).toBe('2026-03-06, 12:07');
  expect(shownTime(lateInMarch, { dateFormat, timeZone: 'America/Chicago' })).toBe('2026-03-05, 17:07');
});

test('midnight begins a day and does not end one', () => {
  const midnight = new Date(Date.UTC(2026, 11, 31));
  expect(shownTime(midnight, { dateFormat: 'day-month-year', timeZone: 'UTC' })).toBe('31 Dec 2026, 00:00');
});
