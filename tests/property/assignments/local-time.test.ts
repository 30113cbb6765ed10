import fc from 'fast-check';
import { expect, test } from 'vitest';
import { localTimeOf, momentOf } from '@/lib/assignments/local-time';

const zones = Intl.supportedValuesOf('timeZone');
const zone = fc.constantFrom(...zones);
const minute = fc
  .integer({ min: Date.UTC(2024, 0, 1) / 60_000, max: Date.UTC(2037, 0, 1) / 60_000 })
  .map((minutes) => minutes * 60_000);

/** What the platform's own copy of the IANA database says the wall shows. */
function wall(at: number, timeZone: string): string {
  const numbers = { year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit' } as const;
  const parts = new Intl.DateTimeFormat('en-US', { timeZone, hourCycle: 'h23', ...numbers }).formatToParts(at);
  const { year, month, day, hour, minute: min } = Object.fromEntries(parts.map(({ type, value }) => [type, value]));
  return `${year}-${month}-${day}T${hour}:${min}`;
}

test('the wall shows what the platform says, in every zone', () => {
  fc.assert(
    fc.property(minute, zone, (at, timeZone) => localTimeOf(at, timeZone) === wall(at, timeZone)),
    {
      numRuns: 2000,
    },
  );
});

test('what the wall shows leads back to the moment, or to the earlier of two', () => {
  fc.assert(
    fc.property(minute, zone, (at, timeZone) => {
      const back = momentOf(localTimeOf(at, timeZone), timeZone);
      expect(back).toBeDefined();
      if (back?.shown === 'once') expect(back.at).toBe(at);
      else {
        expect(back?.shown).toBe('twice');
        expect(back && back.at <= at).toBe(true);
        expect(wall(back?.at ?? at, timeZone)).toBe(wall(at, timeZone));
      }
    }),
    { numRuns: 2000 },
  );
});

test('a time is skipped exactly where no wall ever shows it', () => {
  fc.assert(
    fc.property(minute, zone, (utc, timeZone) => {
      const local = new Date(utc).toISOString().slice(0, 16);
      const found = momentOf(local, timeZone);
      expect(found).toBeDefined();
      if (found) expect(wall(found.at, timeZone) === local).toBe(found.shown !== 'skipped');
    }),
    { numRuns: 2000 },
  );
});
