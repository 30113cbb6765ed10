import { expect, test } from 'vitest';
import { morningsOn, workingDays } from '@/app/_cli/demo/working-days';
import { randomStream } from '@/lib/random';

/** A Wednesday afternoon. */
const now = new Date(Date.UTC(2026, 3, 15, 14, 30));

test('a fortnight has ten working days, none a weekend and none today', () => {
  const days = workingDays(now, 2).map((day) => day.toISOString());
  expect(days).toHaveLength(10);
  expect(days[0]).toBe('2026-04-01T00:00:00.000Z');
  expect(days).not.toContain('2026-04-04T00:00:00.000Z');
  expect(days).not.toContain('2026-04-05T00:00:00.000Z');
  expect(days.at(-1)).toBe('2026-04-14T00:00:00.000Z');
});

test('mornings come one after the other, each on a day of its own, between eight and eleven', () => {
  const mornings = morningsOn(workingDays(now, 2), 5, randomStream('seed', 'test'));
  const days = mornings.map((morning) => morning.toISOString().slice(0, 10));
  expect(new Set(days).size).toBe(5);
  expect([...days].sort()).toEqual(days);
  for (const morning of mornings) {
    expect(morning.getUTCHours()).toBeGreaterThanOrEqual(8);
    expect(morning.getUTCHours()).toBeLessThan(11);
  }
});
