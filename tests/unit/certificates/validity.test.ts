import { expect, test } from 'vitest';
import { validity } from '@/lib/certificates/validity';

test('a certificate is good for months by the calendar, from the whole second', () => {
  expect(validity(Date.UTC(2026, 2, 2, 12, 0, 0, 700), 24)).toEqual({
    validFrom: Date.UTC(2026, 2, 2, 12),
    validUntil: Date.UTC(2028, 2, 2, 12),
  });
});

test('a month without that day ends on its last', () => {
  expect(validity(Date.UTC(2027, 11, 31), 2).validUntil).toBe(Date.UTC(2028, 1, 29));
});
