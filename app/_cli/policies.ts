import { loadCatalogue } from '@/content/load';
import { calibrate } from './policies/calibrate';
import { expert } from './policies/expert';
import { partsChanger } from './policies/parts-changer';
import { printCalibration, printScores } from './policies/print-policies';
import { randomClicker } from './policies/random-clicker';
import { scorePolicies } from './policies/score-policies';
import { soundButSlow } from './policies/sound-but-slow';
import { rightVerdictsWrongReasons } from './policies/wrong-reasons';
import { readOptions, runCommand, UsageError } from './usage-error';

const policies = [expert, soundButSlow, rightVerdictsWrongReasons, randomClicker, partsChanger];

function main(): string {
  const { 'calibration-cases': calibrationCases, ...values } = readOptions({
    cases: { type: 'string', default: '500' },
    'calibration-cases': { type: 'string', default: '2000' },
    word: { type: 'string', default: 'policies' },
    hardest: { type: 'boolean', default: false },
    json: { type: 'boolean', default: false },
  });
  const catalogue = loadCatalogue();
  const drawn = { word: values.word, hardest: values.hardest };
  const [cases, beliefs] = [countFrom(values.cases, '--cases'), countFrom(calibrationCases, '--calibration-cases')];
  const scores = cases > 0 ? scorePolicies(policies, { ...drawn, count: cases }, catalogue) : [];
  const calibration = beliefs > 0 ? calibrate({ ...drawn, count: beliefs }, catalogue) : null;
  if (values.json) return JSON.stringify({ scores, calibration }, null, 2);
  return `${printScores(scores)}\n\n${calibration ? printCalibration(calibration) : ''}`.trim();
}

function countFrom(text: string, option: string): number {
  if (!/^\d{1,6}$/.test(text)) throw new UsageError(`${option}: expected a whole number up to 999999, got ${text}`);
  return Number(text);
}

runCommand(main);
