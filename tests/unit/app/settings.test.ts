import { expect, test } from 'vitest';
import { settingsFrom } from '@/app/_server/organization-settings';
import { changedFields, parseSettings, type Settled } from '@/app/settings/parse-settings';
import { timeZones } from '@/app/settings/time-zones';
import { usualSettings } from '@/lib/accounts/settings';

test('an organisation that settled nothing has the usual settings', () => {
  expect(settingsFrom(null)).toEqual(usualSettings);
});

test('what was settled counts', () => {
  const settled = { ...usualSettings, units: 'psi-f', timeZone: 'America/Chicago' };
  expect(settingsFrom(settled)).toEqual(settled);
});

test('a setting that was not there when the others were stored is the usual one', () => {
  const { passMarks: _, ...older } = { ...usualSettings, dateFormat: 'month-day-year' };
  expect(settingsFrom(older)).toEqual({ ...usualSettings, dateFormat: 'month-day-year' });
});

test('a time zone that the machine does not know is UTC', () => {
  expect(settingsFrom({ ...usualSettings, units: 'bar-c', timeZone: 'Atlantis/Harbour' })).toEqual({
    ...usualSettings,
    units: 'bar-c',
  });
});

const filled = {
  name: ' Harbour Diesel ',
  units: 'bar-c',
  dateFormat: 'day-month-year',
  timeZone: 'America/Chicago',
  evidenceHalfLifeDays: '90',
  practice: '55',
  assessed: ' 80 ',
};

test('a form that is filled in right is read as settings', () => {
  expect(parseSettings(filled, usualSettings)).toEqual({
    name: 'Harbour Diesel',
    settings: {
      units: 'bar-c',
      dateFormat: 'day-month-year',
      timeZone: 'America/Chicago',
      evidenceHalfLifeDays: 90,
      passMarks: { practice: 55, assessed: 80 },
    },
  });
});

test.each<[Settled, unknown]>([
  ['name', '   '],
  ['name', 'x'.repeat(81)],
  ['units', 'furlongs'],
  ['dateFormat', undefined],
  ['timeZone', 'Atlantis/Harbour'],
  ['timeZone', '+01:00'],
  ['evidenceHalfLifeDays', '6'],
  ['evidenceHalfLifeDays', '3651'],
  ['evidenceHalfLifeDays', '90.5'],
  ['practice', ''],
  ['practice', '101'],
  ['practice', '1e1'],
  ['assessed', '-1'],
  ['assessed', 'most'],
])('%s as %j is refused and named', (field, value) => {
  expect(parseSettings({ ...filled, [field]: value }, usualSettings)).toEqual({ wrong: field });
});

test('a form with nothing in it is refused', () => {
  expect(parseSettings({}, usualSettings)).toEqual({ wrong: 'name' });
});

test('the time zone in use stays on the list under a name that the machine no longer lists', () => {
  const inUse = { ...usualSettings, timeZone: 'US/Central' };
  expect(Intl.supportedValuesOf('timeZone')).not.toContain('US/Central');
  expect(timeZones('US/Central')).toContain('US/Central');
  expect(parseSettings({ ...filled, timeZone: 'US/Central' }, inUse)).not.toHaveProperty('wrong');
});

test('what changed is told field by field', () => {
  const before = { name: 'Harbour Diesel', settings: usualSettings };
  const settings = { ...usualSettings, units: 'psi-f', passMarks: { practice: 60, assessed: 80 } } as const;
  expect(changedFields(before, { name: 'Harbour Diesel', settings })).toEqual(['units', 'assessed']);
  expect(changedFields(before, before)).toEqual([]);
});
