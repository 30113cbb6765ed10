import { expect, test } from 'vitest';
import { dayStart, parseDay } from '@/app/log/day-start';
import { logAddress, parseLogQuery } from '@/app/log/parse-log-query';

const day = { year: 2026, month: 3, day: 8 };

test.each([
  ['UTC', '2026-03-08T00:00:00.000Z'],
  // The clock there is put forward later that day.
  ['America/Chicago', '2026-03-08T06:00:00.000Z'],
  ['Pacific/Auckland', '2026-03-07T11:00:00.000Z'],
  ['Asia/Kathmandu', '2026-03-07T18:15:00.000Z'],
])('8 March 2026 begins in %s at %s', (timeZone, start) => {
  expect(dayStart(day, timeZone).toISOString()).toBe(start);
});

test('the day on which the clock is put back begins at its only midnight, and is an hour longer', () => {
  const autumn = { year: 2026, month: 4, day: 5 };
  expect(dayStart(autumn, 'Pacific/Auckland').toISOString()).toBe('2026-04-04T11:00:00.000Z');
  expect(dayStart(autumn, 'Pacific/Auckland', 1).toISOString()).toBe('2026-04-05T12:00:00.000Z');
});

test('a day whose midnight the clock leaps over begins at the leap', () => {
  // Cairo's clock goes from 23 April 2026, 24:00, to 24 April, 01:00 (zone file of IANA).
  expect(dayStart({ year: 2026, month: 4, day: 24 }, 'Africa/Cairo').toISOString()).toBe('2026-04-23T22:00:00.000Z');
});

test.each(['2026-02-30', '2026-13-01', '0000-01-01', '26-1-1', '2026-03-05T10:00', "'; drop table", ''])(
  '%j is no day',
  (text) => {
    expect(parseDay(text)).toBeUndefined();
  },
);

test('every filter of the address counts', () => {
  const raw = { event: 'pin-set', actor: 'ada', person: 'ben', from: '2026-03-08', to: '2026-03-08', before: '41' };
  expect(parseLogQuery(raw, 'UTC')).toEqual({
    filter: {
      event: 'pin-set',
      actorId: 'ada',
      personId: 'ben',
      from: new Date(Date.UTC(2026, 2, 8)),
      until: new Date(Date.UTC(2026, 2, 9)),
      before: 41,
    },
    asked: raw,
    ignored: [],
  });
});

test('the console is asked for as nobody', () => {
  expect(parseLogQuery({ actor: 'console' }, 'UTC').filter).toEqual({ actorId: null });
});

test('what cannot be used is named and counts for nothing', () => {
  const raw = {
    event: 'toString',
    actor: '<b>ada</b>',
    person: ['ada', 'ben'],
    from: '2026-02-30',
    to: 'tomorrow',
    before: '-1',
  };
  expect(parseLogQuery(raw, 'UTC')).toEqual({
    filter: {},
    asked: {},
    ignored: ['event', 'actor', 'person', 'from', 'to', 'before'],
  });
});

test('a field that is left empty, as a form sends it, is not asked for', () => {
  expect(parseLogQuery({ event: '', from: '' }, 'UTC')).toEqual({ filter: {}, asked: {}, ignored: [] });
});

test('an address says what is asked and nothing else', () => {
  expect(logAddress('/log', {})).toBe('/log');
  expect(logAddress('/log/export', { event: 'pin-set', to: '2026-03-08' })).toBe(
    '/log/export?event=pin-set&to=2026-03-08',
  );
});
