/** Why something typed is no number; a code of `problems`. */
export type NumberProblem = 'value-not-a-number' | 'value-ambiguous';

/** A number as people write it, with a point or a comma; null for nothing. */
export function parseDecimal(text: string): number | null | NumberProblem {
  const trimmed = text.trim();
  if (trimmed === '') return null;
  if (!/^-?\d{1,9}([.,]\d{1,9})?$/.test(trimmed)) return 'value-not-a-number';
  if (/^-?[1-9]\d{0,2},\d{3}$/.test(trimmed)) return 'value-ambiguous';
  return Number(trimmed.replace(',', '.'));
}
