import type { ReadingAct, StoredAct } from './acts';
import type { Part, SafetyEvent } from './grade';
import type { CallGrade } from './grade-call';
import type { GradedFinding } from './grade-finding';
import { gradeFindings, marksOfFindings } from './grade-findings';
import { gradePractice } from './grade-practice';
import { gradeRestoring } from './grade-restoring';
import { gradeRoute } from './grade-route';
import { type JudgedStep, judgeSteps } from './judge-steps';
import type { Mark } from './mark';
import { actsOf, type Marking, type Numbered, type Terms } from './marking';
import { safetyEvents } from './safety-events';

/** Everything that was done up to the call, judged. */
export interface Work {
  readings: readonly Numbered<ReadingAct>[];
  findings: readonly GradedFinding[];
  steps: readonly JudgedStep[];
  events: readonly SafetyEvent[];
  /** What was left to be put right, or put right wrongly. */
  restoring: readonly Mark[];
}

export function judgeWork(marking: Marking, acts: readonly StoredAct[]): Work {
  const { theCase, catalogue, rubric } = marking;
  const readings = actsOf(acts, 'reading');
  const { costs } = rubric.practice;
  return {
    readings,
    findings: gradeFindings(marking, acts),
    steps: judgeSteps(marking, readings),
    events: safetyEvents(readings, theCase, catalogue),
    restoring: actsOf(acts, 'call').flatMap((call) => gradeRestoring(readings, call, catalogue, costs)),
  };
}

/** What every part has earned, as shares of its full marks. */
export function marksOf(
  work: Work,
  called: CallGrade,
  expert: { steps: readonly unknown[]; minutes: number },
  terms: Terms,
): Record<Part, readonly Mark[]> {
  const { catalogue, rubric } = terms;
  // Nobody is asked for more findings than the expert needs readings.
  const expected = Math.max(1, Math.min(rubric.findingsExpected, expert.steps.length));
  return {
    verdicts: marksOfFindings(work.findings, ({ verdict }) => verdict, expected),
    reasons: marksOfFindings(work.findings, ({ reason }) => reason, expected),
    call: called.marks,
    route: gradeRoute(work.steps, catalogue, expert.minutes, called, rubric.route),
    practice: gradePractice(work, called, terms),
  };
}
