/** Stands in a form for whichever system, topic or difficulty is drawn. */
export const ANY = 'any';

/** How hard a case may be: at the hardest level two things may be wrong at once. */
export const levels = ['usual', 'hardest'] as const;
export type Level = (typeof levels)[number];

/** How hard a case of its level may be. */
export const difficulties = [ANY, 'easier', 'middle', 'harder'] as const;
export type Difficulty = (typeof difficulties)[number];
