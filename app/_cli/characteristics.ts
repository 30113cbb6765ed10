import { loadCatalogue } from '@/content/load';
import { characteristicsOfScheme, printCharacteristics } from './characteristics/characteristics-of-scheme';
import { readOptions, runCommand, UsageError } from './usage-error';

/** How a scheme decides, by simulated learners; `--json` is what stands under content/characteristics. */
function main(): string {
  const values = readOptions({
    scheme: { type: 'string', default: 'low-pressure-diagnosis' },
    people: { type: 'string', default: '400' },
    cases: { type: 'string', default: '40' },
    questions: { type: 'string', default: '50' },
    seed: { type: 'string', default: 'characteristics' },
    json: { type: 'boolean', default: false },
  });
  const catalogue = loadCatalogue();
  const scheme = catalogue.schemes.get(values.scheme);
  if (!scheme) throw new UsageError(`--scheme: there is no scheme ${values.scheme}`);
  const found = characteristicsOfScheme(scheme, catalogue, {
    people: countFrom(values.people, '--people'),
    cases: countFrom(values.cases, '--cases'),
    questionsPerTopic: countFrom(values.questions, '--questions'),
    seed: values.seed,
  });
  return values.json ? JSON.stringify(found.characteristics, null, 2) : printCharacteristics(found);
}

function countFrom(text: string, option: string): number {
  if (!/^[1-9]\d{0,4}$/.test(text)) throw new UsageError(`${option}: expected a whole number up to 99999, got ${text}`);
  return Number(text);
}

runCommand(main);
