/** Days in which an appeal has to be answered. Assumed: a fortnight reaches over anybody's week off. */
export const DAYS_TO_ANSWER = 14;

const DAY_MS = 86_400_000;

/** By when an appeal has to be answered. Moments in milliseconds since 1970. */
export function dueAt(madeAt: number): number {
  return madeAt + DAYS_TO_ANSWER * DAY_MS;
}

/** Whether nobody answered an appeal in time. */
export function isOverdue(state: string, due: number, now: number): boolean {
  return state === 'open' && now > due;
}
