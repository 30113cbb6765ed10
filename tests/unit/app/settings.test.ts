import { expect, test } from 'vitest';
import { settingsFrom } from '@/app/_server/organization-settings';
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
