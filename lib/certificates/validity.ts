import { Temporal } from 'temporal-polyfill';

/**
 * How long a certificate is good for: from the second it is issued, so many months by the calendar.
 *
 * @param issuedAt  Milliseconds since 1970, UTC.
 * @param months  One or more.
 */
export function validity(issuedAt: number, months: number): { validFrom: number; validUntil: number } {
  const validFrom = Math.floor(issuedAt / 1000) * 1000;
  const from = Temporal.Instant.fromEpochMilliseconds(validFrom).toZonedDateTimeISO('UTC');
  return { validFrom, validUntil: from.add({ months }).epochMilliseconds };
}
