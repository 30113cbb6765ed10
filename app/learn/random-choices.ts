/** Stands in a form for whichever system is drawn. */
export const ANY_RIG = 'any';

/** How hard a case may be: at the hardest level two things may be wrong at once. */
export const levels = ['usual', 'hardest'] as const;
export type Level = (typeof levels)[number];
