import { Temporal } from 'temporal-polyfill';

/** A moment that somebody wrote down as a time on the wall. */
export interface WrittenMoment {
  /** Milliseconds since 1970, UTC. */
  at: number;
  /**
   * `once`: the wall shows that time once. Where clocks are changed: `skipped` when it never shows it, and the moment is
   * as much later as the clocks jump; `twice` when it shows it twice, and the moment is the first.
   */
  shown: 'once' | 'skipped' | 'twice';
}

/**
 * The moment of a local time.
 *
 * @param local  To the minute, without a zone: `2026-03-02T08:00`.
 * @param timeZone  By its name in the IANA database.
 * @returns undefined where the calendar has no such day, or the database no such zone.
 */
export function momentOf(local: string, timeZone: string): WrittenMoment | undefined {
  try {
    const written = Temporal.PlainDateTime.from(local, { overflow: 'reject' });
    const first = written.toZonedDateTime(timeZone, { disambiguation: 'earlier' });
    const last = written.toZonedDateTime(timeZone, { disambiguation: 'later' });
    const at = written.toZonedDateTime(timeZone, { disambiguation: 'compatible' });
    const once = first.epochMilliseconds === last.epochMilliseconds;
    const shown = once ? 'once' : first.toPlainDateTime().equals(written) ? 'twice' : 'skipped';
    return { at: at.epochMilliseconds, shown };
  } catch (thrown) {
    if (thrown instanceof RangeError) return undefined;
    throw thrown;
  }
}

/** What the wall shows at a moment (ms since 1970), to the minute: `2026-03-02T08:00`. @throws where there is no such zone. */
export function localTimeOf(moment: number, timeZone: string): string {
  return Temporal.Instant.fromEpochMilliseconds(moment)
    .toZonedDateTimeISO(timeZone)
    .toPlainDateTime()
    .toString({ smallestUnit: 'minute' });
}
