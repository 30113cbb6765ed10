import type { Catalogue } from '../catalogue';
import type { Cause } from '../faults/cause';
import type { CallAct, ReadingAct } from '../grading/acts';
import type { FindingGrade, Grade, Part } from '../grading/grade';
import type { Numbered } from '../grading/marking';
import type { EffectiveCase } from '../reviewing/effective';
import { causesIn } from '../topics/topics-of';

/** A case that was called, with the points that count for it. */
export interface GradedCase {
  grade: Grade;
  /** With changes for everybody and what people gave. */
  effective: EffectiveCase;
  readings: readonly Pick<Numbered<ReadingAct>, 'seq' | 'check'>[];
  call: Pick<CallAct, 'cause' | 'also'>;
}

/** Something of a case that tells of a topic. */
export interface Piece {
  /** 0…1. */
  share: number;
  /** How much it counts beside the others of its topic. */
  weight: number;
}

/** What the parts of a case are worth and what they earned. */
export interface Parts {
  /** Points that a part weighs now. */
  weight(part: Part): number;
  /** Share of the part that was earned, 0…1. */
  share(part: Part): number;
  /** Share of the part that a person gave in the place of what was computed; undefined where nobody did. */
  given(part: Part): number | undefined;
}

export function partsOf({ effective }: Pick<GradedCase, 'effective'>): Parts {
  const one = (part: Part) => effective.parts.find((each) => each.part === part);
  const share = (part: Part) => {
    const found = one(part);
    if (!found) return 0;
    const { regraded, computed, points } = found;
    if (regraded.outOf > 0) return clamped(points / regraded.outOf);
    return computed.outOf > 0 ? clamped(computed.points / computed.outOf) : 0;
  };
  return {
    weight: (part) => one(part)?.regraded.outOf ?? 0,
    share,
    given: (part) => (one(part)?.given === undefined ? undefined : share(part)),
  };
}

/** What a finding tells: its verdict and its reason, by what these parts weigh together. Where a person gave a part, its share counts for each. */
export function piecesOfFinding(finding: FindingGrade, parts: Parts): Piece[] {
  return [
    { share: parts.given('verdicts') ?? verdictShare(finding), weight: parts.weight('verdicts') },
    { share: parts.given('reasons') ?? reasonShare(finding), weight: parts.weight('reasons') },
  ];
}

/** Grades from before shares were kept say only right or wrong. */
export function verdictShare({ verdictShare: share, verdictRight }: FindingGrade): number {
  return share ?? Number(verdictRight);
}

function reasonShare({ reasonShare: share, limitRight, comparisonRight }: FindingGrade): number {
  return share ?? (Number(limitRight) + Number(comparisonRight)) / 2;
}

/** Of what was wrong and of what was named: the causes as content has them now. */
export function causesOf(
  { grade, call }: Pick<GradedCase, 'grade' | 'call'>,
  catalogue: Pick<Catalogue, 'causes'>,
): { wrong: readonly Cause[]; named: readonly Cause[] } {
  const ids = call.also ? [call.cause, call.also.cause] : [call.cause];
  return { wrong: causesIn(grade, catalogue), named: ids.flatMap((id) => catalogue.causes.get(id) ?? []) };
}

/** Mean of pieces by weight; where none of them weighs anything, of all alike. */
export function meanShare(pieces: readonly Piece[]): number {
  const total = pieces.reduce((sum, { weight }) => sum + weight, 0);
  const weighed = total > 0 ? pieces : pieces.map(({ share }) => ({ share, weight: 1 }));
  const by = total > 0 ? total : pieces.length;
  return by === 0 ? 0 : clamped(weighed.reduce((sum, { share, weight }) => sum + share * weight, 0) / by);
}

function clamped(share: number): number {
  return Math.min(1, Math.max(0, share));
}
