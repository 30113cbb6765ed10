import { notFound } from 'next/navigation';
import { parseCaseCode } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { certify } from '@/lib/diagnosis/certificate';
import { sheetRows } from '@/lib/paper/sheet';
import { catalogue } from './catalogue';

/** A case by its code, for a sheet of paper and its key. Answers like an unknown address where there is no such case. */
export function paperCase(code: string) {
  const read = parseCaseCode(code, catalogue());
  if ('error' in read) notFound();
  const theCase = caseFromSeed(read.spec, catalogue());
  const certificate = certify(theCase, catalogue());
  return { theCase, certificate, rows: sheetRows(theCase, catalogue(), certificate.route.steps) };
}
