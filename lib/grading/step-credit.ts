import type { CheckWorth, RouteStep } from '../diagnosis/next-check';
import type { ReadingAct } from './acts';
import type { Marking } from './marking';
import type { NoteCode } from './note-codes';

/** Why a reading's minutes count as they do. */
export type StepCode = Extract<NoteCode, `step-${string}` | 'trace-unrated'>;

/** What was known and what was open when a reading was taken. */
export interface Moment {
  /** Checks that were expected to tell something, best first. */
  open: readonly CheckWorth[];
  worth: CheckWorth | undefined;
  repeated: boolean;
  /** One repair is settled, or nothing tells more: only measuring the part still counts. */
  over: boolean;
  /** It measures a part believed to be at fault that nothing has measured. */
  proves: boolean;
}

/** Share of a reading's minutes that were well spent, 0…1: its worth per minute over that of the best, by what was known then. */
export function creditOf(
  { catalogue, rubric: { route } }: Pick<Marking, 'catalogue' | 'rubric'>,
  { check, shown }: ReadingAct,
  { open, worth, repeated, over, proves }: Moment,
): { code: StepCode; credit: number } {
  if (repeated) return { code: 'step-repeated', credit: 0 };
  if (shown.every(({ kind }) => kind === 'destroyed' || kind === 'jet')) return { code: 'step-lost', credit: 0 };
  if (over) return proves ? { code: 'step-proof', credit: 1 } : { code: 'step-settled', credit: 0 };
  const quantities = catalogue.checks.get(check)?.quantities ?? [];
  if (!worth && quantities.every(({ of }) => of.kind === 'trace'))
    return { code: 'trace-unrated', credit: route.unratedTrace };
  const ratio = (worth?.perMinute ?? 0) / (open[0]?.perMinute ?? 1);
  return ratio >= route.asGoodFrom
    ? { code: 'step-telling', credit: 1 }
    : { code: 'step-less-telling', credit: Math.round(ratio * 1000) / 1000 };
}

/**
 * A short check that was open and told at least as much per minute, where the one made is long or opens a line under
 * pressure. Undefined where the order was in order, or where a check's worth is not known.
 */
export function soonerThan(
  { catalogue, rubric: { practice } }: Pick<Marking, 'catalogue' | 'rubric'>,
  { check }: ReadingAct,
  { open, worth, repeated, over }: Moment,
): RouteStep | undefined {
  const made = catalogue.checks.get(check);
  if (!made || !worth || repeated || over) return undefined;
  if (made.minutes < practice.longFrom && !made.opens) return undefined;
  return open.find(
    (other) => other.check !== check && other.minutes <= practice.shortUpTo && other.perMinute >= worth.perMinute,
  );
}
