import { expect, test } from 'vitest';
import { localTimeOf, momentOf } from '@/lib/assignments/local-time';

/** Changes of clocks as the IANA time zone database 2025b has them (files europe, northamerica, australasia, africa). */
const changes = [
  // Rule EU: last Sunday of March and of October, at 01:00 UTC.
  ['2026-03-29T01:59', 'Europe/Berlin', '2026-03-29T00:59:00.000Z', 'once'],
  ['2026-03-29T02:30', 'Europe/Berlin', '2026-03-29T01:30:00.000Z', 'skipped'],
  ['2026-03-29T03:00', 'Europe/Berlin', '2026-03-29T01:00:00.000Z', 'once'],
  ['2026-10-25T02:30', 'Europe/Berlin', '2026-10-25T00:30:00.000Z', 'twice'],
  ['2026-10-25T03:00', 'Europe/Berlin', '2026-10-25T02:00:00.000Z', 'once'],
  // Rule US: second Sunday of March, first Sunday of November, at 02:00 on the wall.
  ['2026-03-08T02:30', 'America/Chicago', '2026-03-08T08:30:00.000Z', 'skipped'],
  ['2026-11-01T01:30', 'America/Chicago', '2026-11-01T06:30:00.000Z', 'twice'],
  // Rule LH: half an hour, first Sunday of April and of October.
  ['2026-04-05T01:45', 'Australia/Lord_Howe', '2026-04-04T14:45:00.000Z', 'twice'],
  ['2026-10-04T02:15', 'Australia/Lord_Howe', '2026-10-03T15:45:00.000Z', 'skipped'],
  // Never changed since 1943.
  ['2026-03-29T02:30', 'Africa/Lagos', '2026-03-29T01:30:00.000Z', 'once'],
  // Zone Asia/Kathmandu: a quarter of an hour off.
  ['2026-01-01T00:00', 'Asia/Kathmandu', '2025-12-31T18:15:00.000Z', 'once'],
  // Zone Pacific/Apia: the whole day was left out when the date line moved.
  ['2011-12-30T12:00', 'Pacific/Apia', '2011-12-30T22:00:00.000Z', 'skipped'],
] as const;

test.each(changes)('%s in %s is %s, shown %s', (local, zone, at, shown) => {
  expect(momentOf(local, zone)).toEqual({ at: Date.parse(at), shown });
});

test.each([
  ['2026-02-30T08:00', 'UTC'],
  ['2026-13-01T08:00', 'UTC'],
  ['2026-01-01T24:30', 'UTC'],
  ['', 'UTC'],
  ['2026-01-01T08:00', 'Mars/Olympus'],
  ['2026-01-01T08:00', ''],
])('there is no moment %s in %s', (local, zone) => {
  expect(momentOf(local, zone)).toBeUndefined();
});

test('a moment that was skipped is written down as what the wall shows then', () => {
  const { at } = momentOf('2026-03-29T02:30', 'Europe/Berlin') ?? { at: 0 };
  expect(localTimeOf(at, 'Europe/Berlin')).toBe('2026-03-29T03:30');
});
