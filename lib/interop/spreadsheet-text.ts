/**
 * What a spreadsheet might take for a formula, in whatever width its first sign is written. Papaparse's own rule lets a
 * text through that goes on over several lines.
 */
export const FORMULA = /^\s*[=+\-@＝＋－＠]|^[\t\r\n]/;

/** A text as it may stand in a cell: behind an apostrophe where it would be computed, or where it begins with one itself. */
export function guarded(text: string): string {
  return needsGuard(text) ? `'${text}` : text;
}

/** What was guarded, as it was before. What somebody typed without a guard stays as it is. */
export function unguarded(text: string): string {
  return text.startsWith("'") && needsGuard(text.slice(1)) ? text.slice(1) : text;
}

function needsGuard(text: string): boolean {
  return FORMULA.test(text) || text.startsWith("'");
}
