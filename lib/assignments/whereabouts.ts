/** Somebody's place in a turn, worked out from what they did last. Moments are milliseconds since 1970. */
export interface TaskTrace {
  /** From 1, through the set. */
  place: number;
  kind: 'case' | 'question';
  /** When the case was opened; null for a question, and for a case that was not. */
  openedAt: number | null;
  /** When something was last done at it; null where nothing was. */
  lastAt: number | null;
  /** Called, or answered. */
  done: boolean;
}

export interface Whereabouts {
  done: number;
  /** Undefined once everything is done. */
  current: { place: number; kind: TaskTrace['kind']; minutes: number; stuck: boolean } | undefined;
  /** Minutes since anything was done. */
  quiet: number;
}

/** Minutes that a task is expected to take where there is no limit to share out. Assumed. */
export const EXPECTED_MINUTES = { case: 15, question: 3 } as const;
/** Beyond this many times what is expected, somebody is said to be stuck. Assumed. */
const STUCK_FROM = 1.5;
const MINUTE_MS = 60_000;

/**
 * Minutes that each kind of task is expected to take: shares of the limit, or what is assumed.
 *
 * @param limit  Minutes of the whole turn; null without a limit.
 */
export function expectedMinutes(
  tasks: readonly Pick<TaskTrace, 'kind'>[],
  limit: number | null,
): Record<TaskTrace['kind'], number> {
  const all = tasks.reduce((sum, { kind }) => sum + EXPECTED_MINUTES[kind], 0);
  const scale = limit === null || all === 0 ? 1 : limit / all;
  return { case: EXPECTED_MINUTES.case * scale, question: EXPECTED_MINUTES.question * scale };
}

/** Where somebody is: at what they touched last, or at what comes next once that is done. */
export function whereaboutsOf(
  tasks: readonly TaskTrace[],
  { startedAt, now, expected }: { startedAt: number; now: number; expected: Record<TaskTrace['kind'], number> },
): Whereabouts {
  const touched = (task: TaskTrace) => Math.max(task.lastAt ?? 0, task.openedAt ?? 0);
  const last = tasks.reduce<TaskTrace | undefined>(
    (best, task) => (touched(task) > (best ? touched(best) : 0) ? task : best),
    undefined,
  );
  const at = last && !last.done ? last : nextAfter(tasks, last?.place ?? 0);
  const quietSince = Math.max(startedAt, last ? touched(last) : 0);
  const done = tasks.filter((task) => task.done).length;
  const quiet = minutesBetween(quietSince, now);
  if (!at) return { done, current: undefined, quiet };
  const elsewhere = tasks.filter((task) => task !== at).map(touched);
  const since = Math.max(startedAt, at.openedAt ?? 0, ...elsewhere);
  const minutes = minutesBetween(since, now);
  const stuck = minutes > STUCK_FROM * expected[at.kind];
  return { done, current: { place: at.place, kind: at.kind, minutes, stuck }, quiet };
}

/** The next task that is not done, going round. */
function nextAfter(tasks: readonly TaskTrace[], place: number): TaskTrace | undefined {
  const open = tasks.filter(({ done }) => !done);
  return open.find((task) => task.place > place) ?? open[0];
}

function minutesBetween(from: number, to: number): number {
  return Math.max(0, Math.floor((to - from) / MINUTE_MS));
}
