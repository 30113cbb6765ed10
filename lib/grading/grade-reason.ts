import { verdictOf } from '../checks/verdict';
import type { AreaShares, FindingGrade } from './grade';
import { type Implication, implicationOf } from './implication';
import type { JudgedFinding } from './judged-finding';
import { type Mark, shareOf } from './mark';
import type { NoteCode } from './note-codes';
import type { Rubric } from './rubric';

type ReasonFields = 'limit' | 'limitRight' | 'comparisonRight' | 'clears' | 'suspects' | 'missed' | 'reasonShare';
export type ReasonGrade = Pick<Required<FindingGrade>, ReasonFields> & { marks: readonly Mark[] };

/** Limit, comparison and implication weigh alike. */
const ELEMENT = 1 / 3;

/**
 * Grades a reason: the line of the limit sheet, how the reading stands to it, and what follows for each area.
 *
 * @param before  Belief before the reading.
 * @param after  Beliefs that a sound reading of the same instrument may lead to, the first by what it showed.
 */
export function gradeReason(
  finding: JudgedFinding,
  rubric: Rubric,
  before: AreaShares,
  after: readonly [AreaShares, ...AreaShares[]],
): ReasonGrade {
  const { act, limit, comparisons } = finding;
  const limitRight = act.limit === (limit?.id ?? null);
  const comparisonRight = comparisons.includes(act.comparison) && verdictOf(act.comparison) === act.verdict;
  const implication = implicationOf(act, before, after, rubric.reason);
  const { clears, suspects, missed } = implication;
  const marks = marksOf(finding, limitRight, comparisonRight, implication);
  return {
    limit: limit?.id ?? null,
    limitRight,
    comparisonRight,
    clears,
    suspects,
    missed,
    reasonShare: shareOf(marks),
    marks,
  };
}

/** One mark for a reason that is right throughout, otherwise one for each element. */
function marksOf(
  { act, reading }: JudgedFinding,
  limitRight: boolean,
  comparisonRight: boolean,
  { clears, suspects, missed, share }: Implication,
): Mark[] {
  const values = { seq: reading.seq, finding: act.seq };
  if (limitRight && comparisonRight && share === 1) return [{ code: 'reason-right', values, share: 1, most: 1 }];
  const named = [...clears, ...suspects];
  const counts = { right: named.filter(({ right }) => right).length, named: named.length, missed: missed.length };
  const element = (code: NoteCode, earned: number, more: Mark['values'] = {}): Mark => ({
    code,
    values: { ...values, ...more },
    share: earned * ELEMENT,
    most: ELEMENT,
  });
  return [
    element(limitRight ? 'limit-right' : 'limit-wrong', Number(limitRight)),
    element(comparisonRight ? 'comparison-right' : 'comparison-wrong', Number(comparisonRight)),
    element(implicationCode(named.length, share), share, counts),
  ];
}

function implicationCode(named: number, share: number): NoteCode {
  if (share === 1) return 'implication-right';
  return named === 0 ? 'implication-none' : 'implication-partly';
}
