import type { Catalogue } from '../catalogue';
import type { Cause } from '../faults/cause';
import type { FindingGrade } from '../grading/grade';
import type { Topic } from '../topics/topic';
import { causesOf, type GradedCase, meanShare, type Parts, type Piece, piecesOfFinding } from './pieces-of-case';

/** Why a case tests a topic: it lies where the cause does, was called wrongly, was measured, or was passed over on the way to a wrong call. */
export type LookedReason = 'cause' | 'wrong-call' | 'measured' | 'passed-over';

export interface Told {
  /** Of what the topic could earn, 0…1. */
  share: number;
  /** Findings that it rests on, by `seq`. */
  findings: readonly number[];
  because: LookedReason;
}

/** What a case tells of a topic by its checks and areas; undefined where it does not test it. */
export function toldByLooking(
  topic: Topic,
  graded: GradedCase,
  parts: Parts,
  catalogue: Pick<Catalogue, 'causes'>,
): Told | undefined {
  const measured = graded.grade.findings.filter(({ check }) => topic.checks.includes(check));
  const { wrong, named } = causesOf(graded, catalogue);
  const covers = ({ area }: Cause) => topic.areas.includes(area);
  const expertWent = graded.grade.expertRoute.some(({ check }) => topic.checks.includes(check));
  const because = reasonOf({
    cause: wrong.some(covers),
    'wrong-call': named.some(covers),
    measured: measured.length > 0,
    'passed-over': expertWent && !graded.grade.callCorrect.cause,
  });
  if (!because) return undefined;
  // What the topic's own checks cannot show is shown by whatever led to the call.
  const findings = because === 'cause' && !expertWent && measured.length === 0 ? graded.grade.findings : measured;
  const looked = because === 'wrong-call' && findings.length === 0 ? [] : [lookedPiece(findings, parts)];
  const called = because === 'cause' ? [calledPiece(wrong.filter(covers), graded, parts)] : [];
  const condemned = because === 'wrong-call' ? [{ share: 0, weight: parts.weight('call') }] : [];
  return {
    share: meanShare([...looked, ...called, ...condemned]),
    findings: findings.map(({ seq }) => seq).sort((a, b) => a - b),
    because,
  };
}

function reasonOf(holds: Readonly<Record<LookedReason, boolean>>): LookedReason | undefined {
  return (['cause', 'wrong-call', 'measured', 'passed-over'] as const).find((reason) => holds[reason]);
}

/** Findings together weigh what verdicts and reasons do; none at all has earned nothing. */
function lookedPiece(findings: readonly FindingGrade[], parts: Parts): Piece {
  const share = meanShare(findings.flatMap((finding) => piecesOfFinding(finding, parts)));
  return { share, weight: parts.weight('verdicts') + parts.weight('reasons') };
}

/** The call, as far as it is about causes of the topic: where there are two, each counts by whether it was named. */
function calledPiece(about: readonly Cause[], { grade, call }: GradedCase, parts: Parts): Piece {
  const weight = parts.weight('call');
  const given = parts.given('call');
  if (given !== undefined || !grade.truth.also) return { share: given ?? parts.share('call'), weight };
  const named = about.filter(({ id }) => id === call.cause || id === call.also?.cause);
  return { share: named.length / about.length, weight };
}
