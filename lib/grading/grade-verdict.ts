import { verdictOf } from '../checks/verdict';
import { fromSi } from '../units';
import type { ReadingAct } from './acts';
import type { FindingGrade } from './grade';
import type { JudgedFinding } from './judged-finding';
import { type Mark, shareOf } from './mark';
import type { Marking, Numbered } from './marking';
import type { NoteCode } from './note-codes';
import type { Rubric } from './rubric';
import { settledLater } from './settle';

type VerdictFields = 'expectedVerdict' | 'verdictRight' | 'dialRight' | 'dialShare' | 'settledLater' | 'verdictShare';
export type VerdictGrade = Pick<Required<FindingGrade>, VerdictFields> & { marks: readonly Mark[] };

/**
 * Grades a verdict and the reading of the dial under it. The verdict follows through: a dial misread but judged
 * consistently keeps the verdict and loses the dial. Cannot tell is whole once something settled it, or where nothing could.
 *
 * @param readings  All of the attempt.
 */
export function gradeVerdict(
  finding: JudgedFinding,
  marking: Marking,
  readings: readonly Numbered<ReadingAct>[],
): VerdictGrade {
  const { act, comparisons } = finding;
  const { verdict: weights } = marking.rubric;
  const expected = verdictOf(comparisons[0]);
  const right = comparisons.some((comparison) => verdictOf(comparison) === act.verdict);
  const doubted = expected === 'cannot-tell' && act.verdict === 'cannot-tell';
  const settled = doubted ? settledLater(marking, finding, readings) : null;
  const dial = dialShare(finding, weights);
  const earned = right ? (settled === false ? weights.cannotTellAtOnce : 1) : 0;
  const code = !right ? 'verdict-wrong' : settled === false ? 'cannot-tell-open' : codeOfRight(doubted, settled);
  const marks = marksOf(finding, { code, earned, dial }, weights);
  return {
    expectedVerdict: expected,
    verdictRight: right,
    dialRight: dial === null ? null : dial === 1,
    dialShare: dial,
    settledLater: settled,
    verdictShare: shareOf(marks),
    marks,
  };
}

function codeOfRight(doubted: boolean, settled: boolean | null): NoteCode {
  if (!doubted) return 'verdict-right';
  return settled ? 'cannot-tell-settled' : 'cannot-tell-right';
}

/** A dial that was read right belongs to its verdict; one that was not has a mark of its own. */
function marksOf(
  { act, reading, comparisons }: JudgedFinding,
  { code, earned, dial }: { code: NoteCode; earned: number; dial: number | null },
  { dial: weight }: Rubric['verdict'],
): Mark[] {
  const values = {
    seq: reading.seq,
    finding: act.seq,
    expected: verdictOf(comparisons[0]),
    said: act.verdict,
  };
  const whole = dial === null ? 1 : 1 - weight;
  const verdict = { code, values, share: earned * whole, most: whole };
  if (dial === null) return [verdict];
  if (dial === 1 && earned === 1) return [{ ...verdict, share: 1, most: 1 }];
  const read = dial === 1 ? 'dial-right' : dial > 0 ? 'dial-near' : 'dial-misread';
  return [verdict, { code: read, values, share: dial * weight, most: weight }];
}

/** By how many of the smallest divisions the value entered misses the needle. */
function dialShare({ entered, gauge, shown }: JudgedFinding, weights: Rubric['verdict']): number | null {
  if (entered === undefined || !gauge.scale || shown.kind !== 'value') return null;
  const divisions = Math.abs(fromSi(entered, gauge.unit) - shown.value) / gauge.scale.minor;
  if (divisions <= weights.rightWithin) return 1;
  return divisions <= weights.halfWithin ? 0.5 : 0;
}
