import { type Grade, type Part, parts } from '../grading/grade';
import type { Answer } from '../questions/answer';
import type { QuestionBody } from '../questions/question';
import type { Change } from '../regrading/change';
import { reweighed, weightsAfter, withGiven } from '../regrading/remark-case';
import { remarked } from '../regrading/remark-question';

/** Points that count, from those computed by way of what was changed for everybody to what a person gave for this work. */

/** Points that somebody gave in the place of others; null takes an earlier one back. Oldest first. */
export interface Given {
  /** Of a case; null for a question. */
  part: Part | null;
  points: number | null;
}

export interface EffectivePart {
  part: Part;
  /** As it was graded at the call. */
  computed: { points: number; outOf: number };
  /** After changes for everybody. */
  regraded: { points: number; outOf: number };
  /** By a person, as they gave them; undefined where nobody did, or it was taken back. */
  given: number | undefined;
  /** That count. */
  points: number;
}

export interface EffectiveCase {
  parts: readonly EffectivePart[];
  /** 0…100 each. */
  computed: number;
  regraded: number;
  total: number;
}

/**
 * What an attempt's points come to.
 *
 * @param changes  For everybody at its assignment that count, oldest first.
 * @param safetyCap  Of the rubric: no total of changed weights rises above it once something dangerous was done.
 */
export function effectiveCase(
  grade: Pick<Grade, 'parts' | 'total' | 'safetyEvents'>,
  changes: readonly Change[],
  safetyCap: number,
  given: readonly Given[],
): EffectiveCase {
  const weights = weightsAfter(changes);
  const regraded = weights ? reweighed(grade, weights, safetyCap) : { parts: grade.parts, total: grade.total };
  const standing = standingParts(given);
  const counted = withGiven(regraded, standing);
  return {
    parts: grade.parts.map(({ part, ...computed }) => {
      const after = regraded.parts.find((one) => one.part === part) ?? computed;
      const counts = counted.parts.find((one) => one.part === part) ?? after;
      return {
        part,
        computed,
        regraded: { points: after.points, outOf: after.outOf },
        given: standing[part],
        points: counts.points,
      };
    }),
    computed: grade.total,
    regraded: regraded.total,
    total: counted.total,
  };
}

/** The last that was given for each part; what was taken back counts no more. */
export function standingParts(given: readonly Given[]): Partial<Record<Part, number>> {
  return Object.fromEntries(
    parts.flatMap((part) => {
      const last = given.findLast((one) => one.part === part);
      return last && last.points !== null ? [[part, last.points]] : [];
    }),
  );
}

export interface MarkedQuestion {
  asked: QuestionBody;
  answer: Answer | null;
  /** 0…1; null where only a person can tell. */
  credit: number | null;
  /** Steps that a person gave for free text; undefined while nobody has. */
  manual: number | undefined;
}

/** Steps of a question, 0…`outOf` each; null while a person has to mark it. */
export interface EffectiveQuestion {
  outOf: number;
  computed: number | null;
  regraded: number | null;
  /** By a person in the place of the others. */
  given: number | undefined;
  points: number | null;
}

/**
 * What a question's points come to.
 *
 * @param place  Of the set's tasks; undefined for a question outside a set, which no change for everybody reaches.
 */
export function effectiveQuestion(
  { asked, answer, credit, manual }: MarkedQuestion,
  changes: readonly Change[],
  place: number | undefined,
  given: readonly Given[],
): EffectiveQuestion {
  const outOf = asked.steps;
  const computed = manual === undefined ? credit : manual / outOf;
  const regraded = place === undefined ? computed : remarked({ asked, answer, credit: computed }, changes, place);
  const last = given.at(-1)?.points ?? undefined;
  return {
    outOf,
    computed: inSteps(computed, outOf),
    regraded: inSteps(regraded, outOf),
    given: last,
    points: last === undefined ? inSteps(regraded, outOf) : Math.min(last, outOf),
  };
}

function inSteps(credit: number | null, steps: number): number | null {
  return credit === null ? null : Math.round(credit * steps * 100) / 100;
}
