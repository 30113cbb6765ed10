/** Undecided stays undecided: it is neither of the others. */
export const decisions = ['ready', 'not-yet', 'not-enough-evidence'] as const;
export type Decision = (typeof decisions)[number];
