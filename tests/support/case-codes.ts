import { loadCatalogue } from '@/content/load';
import { formatCaseCode, parseCaseCode, seedFromWord } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';

const catalogue = loadCatalogue();

/** The code of a case on tern-13 with a chosen cause; severity in thousandths. */
export function codeOf(cause: string, severity: number, word = 'browser-test'): string {
  return formatCaseCode({ rig: 'tern-13', seed: seedFromWord(word), chosen: { cause, severity } });
}

/** What an attempt keeps of its case, by its code. */
export function storedCase(code: string): { caseCode: string; generatorVersion: number; contentHash: string } {
  const parsed = parseCaseCode(code, catalogue);
  if ('error' in parsed) throw new Error(`${code}: ${parsed.error}`);
  const { generatorVersion, contentHash } = caseFromSeed(parsed.spec, catalogue);
  return { caseCode: code, generatorVersion, contentHash };
}
