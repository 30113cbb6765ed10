import { beliefAtStart } from '../diagnosis/belief';
import type { StoredAct } from './acts';
import { type GradedFinding, gradeFinding } from './grade-finding';
import { judgedFinding } from './judged-finding';
import type { Mark } from './mark';
import { actsOf, type Marking } from './marking';

/** Every finding that judges something measured, belief carried from one to the next in the order of the acts. */
export function gradeFindings(marking: Marking, acts: readonly StoredAct[]): GradedFinding[] {
  const readings = actsOf(acts, 'reading');
  let belief = beliefAtStart(marking.particles);
  return actsOf(acts, 'finding').flatMap((act) => {
    const reading = readings.find(({ seq }) => seq === act.reading);
    const judged = judgedFinding(marking, act, reading);
    if (!judged) return [];
    const graded = gradeFinding(judged, marking, belief, readings);
    belief = graded.after;
    return [graded];
  });
}

/**
 * The marks of each finding in equal shares; where there are fewer than expected, those that are missing earn nothing.
 *
 * @param of  Marks of one finding.
 */
export function marksOfFindings(
  findings: readonly GradedFinding[],
  of: (finding: GradedFinding) => readonly Mark[],
  expected: number,
): Mark[] {
  const count = findings.length;
  const each = 1 / Math.max(count, expected);
  const marks = findings.flatMap(of).map((mark) => ({ ...mark, share: mark.share * each, ...scaled(mark, each) }));
  if (count >= expected) return marks;
  return [...marks, { code: 'few-findings', values: { count, expected }, share: 0, most: (expected - count) * each }];
}

function scaled({ most }: Mark, each: number): Pick<Mark, 'most'> {
  return most === undefined ? {} : { most: most * each };
}
