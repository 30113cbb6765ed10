/** As many options as a question may have. */
export const MOST_OPTIONS = 12;

const numbers = Array.from({ length: MOST_OPTIONS }, (_, index) => index + 1);

/**
 * Columns of a file of questions. Of options, ids stand beside their texts: `right` names ids, or places counted from 1
 * where the ids are left out. What is to be pointed at on a rig's drawing stands in `right` as `element:gear-pump`.
 */
export const columns: readonly string[] = [
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
  'rig',
  'most_characters',
  'model_answer',
  'guidance',
  'points',
];

/** Forms that a row can hold: pictures have no place in one. */
export const csvForms = ['choice', 'several', 'order', 'numbers', 'point', 'words'] as const;
export type CsvForm = (typeof csvForms)[number];

/** Between the parts of a list, such as topics. */
export const BETWEEN = ';';
