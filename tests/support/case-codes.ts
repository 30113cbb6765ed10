import { formatCaseCode, seedFromWord } from '@/lib/cases/case-code';

/** The code of a case on tern-13 with a chosen cause; severity in thousandths. */
export function codeOf(cause: string, severity: number, word = 'browser-test'): string {
  return formatCaseCode({ rig: 'tern-13', seed: seedFromWord(word), chosen: { cause, severity } });
}
