/** What an attempt is made for. */
export const purposes = ['practice', 'assessment'] as const;
export type Purpose = (typeof purposes)[number];

/** Whether an attempt may have hints. Assessed work never has: there, evidence would show the hint and not the learner. */
export function mayBeCoached(purpose: Purpose): boolean {
  return purpose === 'practice';
}
