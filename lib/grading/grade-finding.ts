import { type Belief, updateBelief } from '../diagnosis/belief';
import type { Particles } from '../diagnosis/particles';
import { byArea } from '../diagnosis/shares';
import type { ReadingAct } from './acts';
import type { FindingGrade } from './grade';
import { gradeReason } from './grade-reason';
import { gradeVerdict } from './grade-verdict';
import type { JudgedFinding } from './judged-finding';
import type { Mark } from './mark';
import type { Marking, Numbered } from './marking';

/** A finding's grade, its marks as shares of a finding's full marks, and the belief after it. */
export interface GradedFinding {
  grade: Required<FindingGrade>;
  verdict: readonly Mark[];
  reason: readonly Mark[];
  after: Belief;
}

/**
 * Grades one finding against what its instrument showed.
 *
 * @param before  Belief before its reading.
 * @param readings  All of the attempt: a later one may settle what this could not tell.
 */
export function gradeFinding(
  finding: JudgedFinding,
  marking: Marking,
  before: Belief,
  readings: readonly Numbered<ReadingAct>[],
): GradedFinding {
  const { act, reading, quantity, seen, shown } = finding;
  const { particles, rubric } = marking;
  const [after, ...likewise] = soundBeliefs(finding, before, particles);
  const shares = (belief: Belief) => byArea(particles, belief);
  const { marks: verdict, ...verdictGrade } = gradeVerdict(finding, marking, readings);
  const reasons = gradeReason(finding, rubric, shares(before), [shares(after), ...likewise.map(shares)]);
  const { marks: reason, ...reasonGrade } = reasons;
  const printed = shown.kind === 'codes';
  const grade = {
    seq: act.seq,
    check: reading.check,
    condition: reading.condition,
    quantity: quantity.id,
    shown: printed ? null : seen.value,
    uncertainty: printed ? null : seen.uncertainty,
    areas: shares(after),
    ...verdictGrade,
    ...reasonGrade,
  };
  return { grade, verdict, reason, after };
}

/**
 * Beliefs that sound readings of the same instrument lead to: what it showed, that one standard uncertainty to either side,
 * and what the learner read off it, from which sound reasoning goes on.
 */
function soundBeliefs(finding: JudgedFinding, before: Belief, particles: Particles): [Belief, ...Belief[]] {
  const { reading, quantity, seen, entered } = finding;
  const { check, condition } = reading;
  const after = (value: number) =>
    updateBelief(before, particles, { check, condition, quantity, seen: { ...seen, value } });
  const exact = seen.beyond !== undefined || seen.uncertainty === 0 || quantity.measures === 'codes';
  const aside = exact ? [] : [seen.value - seen.uncertainty, seen.value + seen.uncertainty];
  const own = entered === undefined || entered === seen.value ? [] : [entered];
  return [after(seen.value), ...[...aside, ...own].map(after)];
}
