import type { Evidence } from './evidence';
import type { Derived } from './response';

/**
 * What has to be added to the log so that it says of one response what is derived of it now. Nothing where it says so already.
 * What it no longer tests is said not to count, since nothing is ever taken out.
 *
 * @param logged  Every revision of the same response.
 */
export function revisionsDue(derived: readonly Derived[], logged: readonly Evidence[]): Evidence[] {
  const last = lastRevisions(logged);
  const changed = derived.flatMap((one): Evidence[] => {
    const before = last.get(one.topic);
    if (before && isSame(one, before)) return [];
    // What is withdrawn before it was ever counted needs no entry.
    if (!before && !one.counts) return [];
    return [{ ...one, revision: (before?.revision ?? 0) + 1 }];
  });
  const gone = [...last.values()].filter((one) => one.counts && !derived.some(({ topic }) => topic === one.topic));
  return [...changed, ...gone.map((one) => ({ ...one, counts: false, revision: one.revision + 1 }))];
}

/** Of each response on each topic the revision that counts. */
export function standingRevisions<T extends Pick<Evidence, 'work' | 'topic' | 'revision'>>(logged: readonly T[]): T[] {
  const last = new Map<string, T>();
  for (const one of logged) {
    const key = `${one.work} ${one.topic}`;
    const before = last.get(key);
    if (!before || before.revision < one.revision) last.set(key, one);
  }
  return [...last.values()];
}

function lastRevisions(logged: readonly Evidence[]): Map<string, Evidence> {
  return new Map(standingRevisions(logged).map((one) => [one.topic, one]));
}

/** Whether two say the same, whatever their revision and the order of their fields. */
function isSame(derived: Derived, { revision: _, ...before }: Evidence): boolean {
  return sorted(derived) === sorted(before);
}

function sorted(value: unknown): string {
  return JSON.stringify(value, (_, inner) =>
    inner && typeof inner === 'object' && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}
