/** What a check may ask for. */
export const QUESTIONS = { least: 5, most: 40 };
export const MINUTES = { least: 5, most: 180 };
