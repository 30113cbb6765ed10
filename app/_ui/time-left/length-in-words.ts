const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** A length of time in its two largest units, rounded down: `3 days 4 hours`, `1 hour 20 minutes`, `7 minutes`. */
export function lengthInWords(milliseconds: number, locale: string): string {
  const parts = [
    { unit: 'day', count: Math.floor(milliseconds / DAY) },
    { unit: 'hour', count: Math.floor((milliseconds % DAY) / HOUR) },
    { unit: 'minute', count: Math.floor((milliseconds % HOUR) / MINUTE) },
  ];
  const first = Math.max(
    0,
    parts.findIndex(({ count }, index) => count > 0 || index === parts.length - 1),
  );
  return parts
    .slice(first, first + 2)
    .filter(({ count }, index) => count > 0 || index === 0)
    .map(({ unit, count }) => new Intl.NumberFormat(locale, { style: 'unit', unit, unitDisplay: 'long' }).format(count))
    .join(' ');
}
