import { GENERATOR_VERSION } from '@/lib/cases/case';
import type { Catalogue } from '@/lib/catalogue';
import { QUESTION_VERSION } from '@/lib/questions/question';
import type { SchemeCharacteristics } from '@/lib/readiness/characteristics-of-scheme';
import type { Scheme } from '@/lib/readiness/scheme';
import { sittingRulesUnder } from '@/lib/readiness/scheme-rules';
import { realPool } from './real-pool';
import { asMeant, Examination } from './simulate-scheme';

/** Logits above the cut at which a table has its rows. */
export const ABOVE = [-2, -1.5, -1, -0.5, -0.25, 0, 0.25, 0.5, 1, 1.5, 2] as const;

export interface SimulationSize {
  /** At each ability, and as many again drawn over all of them. */
  people: number;
  cases: number;
  questionsPerTopic: number;
  seed: string;
}

export interface Found {
  characteristics: SchemeCharacteristics;
  /** Works of cases by the level meant and the score returned. */
  meant: readonly (readonly number[])[];
}

/** How a scheme decides. @throws RangeError where its role profile is not there. */
export function characteristicsOfScheme(
  scheme: Scheme,
  catalogue: Catalogue,
  { people, cases, questionsPerTopic, seed }: SimulationSize,
  above: readonly number[] = ABOVE,
): Found {
  const profile = catalogue.profiles.get(scheme.profile);
  if (!profile) throw new RangeError(`There is no profile ${scheme.profile}`);
  const rules = sittingRulesUnder(scheme, profile);
  const topics = rules.topics.map(({ topic }) => topic);
  const pool = realPool(topics, { cases, questionsPerTopic, word: seed }, catalogue);
  const examination = new Examination(pool, rules, seed);
  return {
    characteristics: {
      id: scheme.id,
      cut: scheme.cut.ability,
      confidence: scheme.confidence,
      refuse: scheme.refuse,
      rows: above.map((one) => examination.row(one, people)),
      population: examination.population(people),
      asMeant: asMeant(examination.workshop),
      madeBy: {
        seed,
        cases,
        questionsPerTopic,
        contentHash: catalogue.questionHash,
        generatorVersion: GENERATOR_VERSION,
        questionVersion: QUESTION_VERSION,
      },
    },
    meant: examination.workshop.meant,
  };
}

export function printCharacteristics({ characteristics, meant }: Found): string {
  const { rows, population, confidence } = characteristics;
  const head = ['above cut', 'ready', 'not yet', 'undecided', 'all ready', 'tasks', 'minutes'];
  const cells = rows.map(({ above, ready, notYet, undecided, allReady, tasks, minutes }) => [
    above.toFixed(2),
    ...[ready, notYet, undecided, allReady].map((share) => share.toFixed(3)),
    tasks.toFixed(1),
    minutes.toFixed(0),
  ]);
  return [
    table([head, ...cells]),
    `Wrongly ready is to be ${(1 - confidence).toFixed(2)} at most, half a logit below the cut and further down.`,
    `Over ${population.people} people: 90 % intervals hold the truth in ${population.coverage.toFixed(3)}, correlation ${population.correlation.toFixed(3)},`,
    `decisions right ${population.accuracy.toFixed(3)}, alike a second time ${population.agreement.toFixed(3)}`,
    'Works of a case by the level that was meant (down) and the score that came of it (across):',
    table([['', '0', '1', '2', '3', '4'], ...meant.map((row, level) => [String(level), ...row.map(String)])]),
  ].join('\n');
}

function table(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, at) => Math.max(...rows.map((row) => row[at]?.length ?? 0)));
  return rows.map((row) => row.map((cell, at) => cell.padStart(widths[at] ?? 0)).join('  ')).join('\n');
}
