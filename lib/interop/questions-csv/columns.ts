/** As many options as a question may have. */
export const MOST_OPTIONS = 12;

const numbers = Array.from({ length: MOST_OPTIONS }, (_, index) => index + 1);

/**
 * Columns of a file of questions. Of options, ids stand with their texts: `right` names ids, or places counted from 1 where
 * the ids are left out.
 */
export const columns = [
  'title',
  'form',
  'stem',
  'topics',
  'difficulty',
  'seconds',
  'explanation',
  'right',
  'shuffle',
  ...numbers.flatMap((n) => [`option_${n}`, `id_${n}`, `because_${n}`]),
  'variables',
  'formula',
  'unit',
  'tolerance',
  'tolerance_kind',
  'decimals',
  'most_characters',
  'model_answer',
  'guidance',
  'points',
] as const;

export type Column = string;

/** Forms that a row can hold; pictures and drawings have no place in one. */
export const csvForms = ['choice', 'several', 'order', 'numbers', 'words'] as const;
export type CsvForm = (typeof csvForms)[number];

/** Between the parts of a list, such as topics. */
export const BETWEEN = ';';
