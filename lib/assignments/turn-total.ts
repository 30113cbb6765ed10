/** What a task's share is worth beside others: a case asks for readings, verdicts, reasons and a call. Assumed. */
export const TASK_WEIGHTS = { case: 5, question: 1 } as const;

/** What became of a task, as far as a total needs it. */
export interface EarnedTask {
  kind: keyof typeof TASK_WEIGHTS;
  /** 0…1; null while a person has to mark it. */
  share: number | null;
  /** It counts for nobody. */
  withdrawn: boolean;
}

export interface TurnTotal {
  /** 0…100 of what is marked, to a tenth; 0 where nothing counts. */
  total: number;
  /** Tasks that wait for a person. */
  waiting: number;
}

/**
 * What a turn comes to. A task that waits for a person counts once it is marked; until then the others are all there is.
 *
 * @param lateCost  Points that each hundred loses; 0 for a turn in time.
 */
export function turnTotal(tasks: readonly EarnedTask[], lateCost = 0): TurnTotal {
  const counted = tasks.filter(({ withdrawn }) => !withdrawn);
  const marked = counted.filter(({ share }) => share !== null);
  const outOf = marked.reduce((sum, { kind }) => sum + TASK_WEIGHTS[kind], 0);
  const earned = marked.reduce((sum, { kind, share }) => sum + TASK_WEIGHTS[kind] * (share ?? 0), 0);
  const total = outOf > 0 ? ((100 * earned) / outOf) * (1 - lateCost / 100) : 0;
  return { total: Math.round(total * 10) / 10, waiting: counted.length - marked.length };
}
