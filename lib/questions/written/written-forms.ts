/** How a written question is answered. */
export const writtenForms = ['choice', 'several', 'numbers', 'order', 'point', 'spot', 'words'] as const;
export type WrittenForm = (typeof writtenForms)[number];
