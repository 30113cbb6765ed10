import { describe, expect, test } from 'vitest';
import { characteristicsOfScheme } from '@/app/_cli/characteristics/characteristics-of-scheme';
import { loadCatalogue } from '@/content/load';
import type { SchemeCharacteristics } from '@/lib/readiness/characteristics-of-scheme';
import type { Scheme } from '@/lib/readiness/scheme';

/*
 * The table of a scheme's page, run again in part: real cases and questions, the real grader and the real adaptive sitting.
 * Tolerances are 3.3 standard errors (one false alarm in a thousand): a share over so many people errs by √(p (1 − p) / n), both
 * here and in the table; topics of one person hang together, so people count and not topics. The pool is smaller than the
 * table's, which is worth another 0.05.
 */
const catalogue = loadCatalogue();
const scheme = catalogue.schemes.get('low-pressure-diagnosis') as Scheme;
const kept = catalogue.characteristics.get('low-pressure-diagnosis') as SchemeCharacteristics;
const PEOPLE = 50;
const OTHER_POOL = 0.05;

const { characteristics: found } = characteristicsOfScheme(
  scheme,
  catalogue,
  { people: PEOPLE, cases: 10, questionsPerTopic: 30, seed: 'tested' },
  [-1, -0.5, 0, 1],
);
const row = (of: SchemeCharacteristics, above: number) => of.rows.find((one) => one.above === above);

function within(share: number, people: number): number {
  const floor = Math.max(share, 1 / people) * Math.max(1 - share, 1 / people);
  return 3.3 * Math.sqrt(floor / people);
}

describe('the decisions of a scheme', () => {
  test('call hardly anybody ready who is half a logit below the line or further', () => {
    for (const of of [found, kept])
      for (const { above, ready, people } of of.rows)
        if (above <= -0.5) expect(ready, `${above}`).toBeLessThanOrEqual(1 - scheme.confidence + within(0.1, people));
    // The table itself keeps the stated rate without any allowance.
    for (const { above, ready } of kept.rows)
      if (above <= -0.5) expect(ready, `${above}`).toBeLessThanOrEqual(1 - scheme.confidence);
  });

  test.each([-1, -0.5, 0, 1])('come out as in the table, %f from the line', (above) => {
    for (const share of ['ready', 'notYet', 'undecided'] as const) {
      const [now, then] = [row(found, above)?.[share] ?? Number.NaN, row(kept, above)?.[share] ?? Number.NaN];
      expect(Math.abs(now - then), `${share}: ${now} now, ${then} in the table`).toBeLessThanOrEqual(
        within(then, PEOPLE) + within(then, 400) + OTHER_POOL,
      );
    }
  });

  test('rest on abilities that hold to the truth', () => {
    // 87 to 93 %, and what the mean of 50 people may miss it by.
    for (const { population } of [found, kept]) {
      const error = population === kept.population ? 0 : within(0.9, PEOPLE);
      expect(population.coverage).toBeGreaterThanOrEqual(0.87 - error);
      expect(population.coverage).toBeLessThanOrEqual(0.93 + error);
      expect(population.correlation).toBeGreaterThanOrEqual(0.8);
    }
  });

  test('are those of the rules as content has them', () => {
    expect([kept.cut, kept.confidence, kept.refuse]).toEqual([scheme.cut.ability, scheme.confidence, scheme.refuse]);
    expect([...catalogue.characteristics.keys()]).toEqual([...catalogue.schemes.keys()]);
  });

  test('come of work whose score is mostly the level that was meant, and never of nothing', () => {
    for (const share of [...found.asMeant, ...kept.asMeant]) expect(share).toBeGreaterThan(0.5);
  });
});
