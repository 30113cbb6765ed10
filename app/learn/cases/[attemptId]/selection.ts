import type { AttemptView, ReadingItem, ReadingView } from '@/app/_server/attempt-view';
import type { CheckChoice } from '@/app/_server/rig-choices';

export type Query = Record<string, string | string[] | undefined>;

/** What the address picks out of an attempt. Anything in it that does not exist picks nothing. */
export interface Selection {
  port: string | undefined;
  check: CheckChoice | undefined;
  /** The reading on the bench: the one asked for, or the latest of the check. */
  reading: ReadingView | undefined;
  /** The quantity of that reading to be judged. */
  item: ReadingItem | undefined;
}

export function selectFrom(view: AttemptView, query: Query): Selection {
  const asked = view.readings.find(({ seq }) => String(seq) === query.reading);
  const checkId = asked?.check.id ?? query.check;
  const check = view.face?.choices.checks.find(({ id }) => id === checkId);
  const reading = asked ?? view.readings.findLast((candidate) => candidate.check.id === check?.id);
  return {
    port: view.face?.rig.ports.find(({ id }) => id === query.port)?.id,
    check,
    reading,
    item: reading && itemOf(reading, query.quantity),
  };
}

/** The quantity asked for, else the first that is not judged, else the first. */
function itemOf({ items }: ReadingView, quantity: Query[string]): ReadingItem | undefined {
  const asked = items.find((item) => item.quantity === quantity);
  return asked ?? items.find(({ finding }) => !finding) ?? items[0];
}
