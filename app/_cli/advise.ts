import { loadCatalogue } from '@/content/load';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { adviseOn } from './advice';
import { CASE_USAGE, caseOptions, caseSpecFrom } from './case-options';
import { findingsFrom } from './finding-argument';
import { printAdvice } from './print-advice';
import { readOptions, runCommand } from './usage-error';

const USAGE = `npm run -s advise -- ${CASE_USAGE} [--finding CHECK@CONDITION[@INSTRUMENT] …] [--json]`;

function main(): string {
  const values = readOptions({
    ...caseOptions,
    finding: { type: 'string', multiple: true, default: [] },
    json: { type: 'boolean', default: false },
  });
  const catalogue = loadCatalogue();
  const theCase = caseFromSeed(caseSpecFrom(values, catalogue, USAGE), catalogue);
  const advice = adviseOn(theCase, catalogue, findingsFrom(values.finding, theCase, catalogue));
  return values.json ? JSON.stringify(advice, null, 2) : printAdvice(advice, catalogue);
}

runCommand(main);
