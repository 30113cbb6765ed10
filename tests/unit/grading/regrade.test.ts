import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Area, areas } from '@/lib/areas';
import type { Case } from '@/lib/cases/case';
import { seedFromWord } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { conditionsOf, performCheck } from '@/lib/cases/perform-check';
import { verdicts } from '@/lib/checks/verdict';
import type { FindingAct, ReadingAct, StoredAct } from '@/lib/grading/acts';
import { type Grade, parts } from '@/lib/grading/grade';
import { gradeAttempt } from '@/lib/grading/grade-attempt';
import { type Rubric, rubricSchema } from '@/lib/grading/rubric';
import { catalogue } from '../../support/bench-rig';
import { standardRubric } from '../../support/marking';
import { judged, rightCall } from '../../support/worked-attempt';

/** Anything that a learner may have done: any check in any condition with any instrument, judged well or badly. */
const hand = fc.record({
  word: fc.constantFrom('alder', 'beech', 'cedar', 'damson'),
  rig: fc.constantFrom(...catalogue.rigs.keys()),
  moves: fc.array(
    fc.record({
      check: fc.constantFrom(...catalogue.checks.keys()),
      condition: fc.nat(20),
      instrument: fc.nat(20),
      verdict: fc.option(fc.constantFrom(...verdicts)),
      clears: fc.subarray<Area>([...areas]),
      value: fc.option(fc.double({ min: 0, max: 60, noNaN: true })),
    }),
    { minLength: 1, maxLength: 5 },
  ),
  cause: fc.constantFrom(...catalogue.causes.keys()),
  restored: fc.option(fc.subarray([...catalogue.restoring.keys()])),
});

type Hand = typeof hand extends fc.Arbitrary<infer T> ? T : never;

/** Four weights, and the fifth what is left of a hundred. */
const weights = fc.array(fc.integer({ min: 0, max: 25 }), { minLength: 4, maxLength: 4 });

function actsOf(theCase: Case, { moves, cause, restored }: Hand): StoredAct[] {
  const acts: StoredAct[] = [];
  for (const { check: id, condition, instrument, verdict, clears, value } of moves) {
    const check = catalogue.checks.get(id);
    if (!check) throw new Error(`No check ${id}`);
    const conditions = conditionsOf(check);
    const hookUp = {
      check: check.id,
      condition: conditions[condition % conditions.length] ?? 'idle',
      instrument: check.instruments[instrument % check.instruments.length] ?? '',
    };
    const read = performCheck(theCase, catalogue, hookUp);
    if ('error' in read) continue;
    const reading: ReadingAct & { seq: number } = {
      kind: 'reading',
      seq: acts.length + 1,
      ...hookUp,
      shown: read.shown,
    };
    acts.push(reading);
    const suspects = areas.filter((area) => !clears.includes(area)).slice(0, 2);
    if (verdict)
      acts.push(judged(theCase, acts.length + 1, reading, changesOf(reading, verdict, clears, suspects, value)));
  }
  const call = { ...rightCall(theCase, acts.length + 1), cause };
  return [...acts, restored ? { ...call, restored } : call];
}

function changesOf(
  { shown: [first] }: ReadingAct,
  verdict: FindingAct['verdict'],
  clears: readonly Area[],
  suspects: readonly Area[],
  value: number | null,
): Partial<FindingAct> {
  const entered = value !== null && first?.kind === 'value' ? { entered: { value, unit: first.unit } } : {};
  return { verdict, clears, suspects, ...entered };
}

function rubricOf(given: readonly number[]): Rubric {
  const [verdicts = 0, reasons = 0, call = 0, route = 0] = given;
  const practice = 100 - verdicts - reasons - call - route;
  return rubricSchema.parse(standardRubric({ parts: { verdicts, reasons, call, route, practice } }));
}

function stored<T>(value: T): T {
  return JSON.parse(JSON.stringify(value)) as T;
}

/** Total and score from the notes alone. */
function recomputed({ notes, safetyEvents }: Grade, { bands, safetyCap }: Rubric) {
  const points = notes.reduce((sum, note) => sum + (note.points ?? 0), 0);
  const sum = Math.round(Math.round(points * 10) / 10);
  const total = safetyEvents.length > 0 ? Math.min(sum, safetyCap) : sum;
  return { total, score: bands.filter((from) => from <= total).length };
}

test('whatever was done, stored acts grade again to the same grade, and its points add up', () => {
  fc.assert(
    fc.property(hand, weights, (done, given) => {
      const theCase = caseFromSeed({ rig: done.rig, seed: seedFromWord(done.word) }, catalogue);
      const [acts, rubric] = [actsOf(theCase, done), rubricOf(given)];
      const first = gradeAttempt(theCase, catalogue, acts, rubric);
      const again = gradeAttempt(
        caseFromSeed({ rig: done.rig, seed: seedFromWord(done.word) }, catalogue),
        catalogue,
        stored(acts),
        stored(rubric),
      );
      expect(again).toEqual(first);
      expect(stored(first)).toEqual(first);
      expect(first).toMatchObject(recomputed(first, rubric));
      for (const { part, points, outOf } of first.parts) {
        expect(outOf).toBe(rubric.parts[part]);
        expect(points).toBeGreaterThanOrEqual(0);
        expect(points).toBeLessThanOrEqual(outOf);
      }
      expect(first.parts.map(({ part }) => part)).toEqual(parts);
    }),
    { numRuns: 10, endOnFailure: true },
  );
}, 120_000);
