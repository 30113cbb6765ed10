import { type Area, areas } from '../areas';
import type { FindingAct } from './acts';
import type { AreaShares, NamedArea } from './grade';
import type { Rubric } from './rubric';

type Thresholds = Rubric['reason'];

/** What the learner said follows from a reading, held against what does. */
export interface Implication {
  clears: readonly Required<NamedArea>[];
  suspects: readonly Required<NamedArea>[];
  missed: readonly Area[];
  /** 0…1. */
  share: number;
}

/**
 * An area is cleared where its share of belief fell below a stated part of what it was, or is hardly there; suspect where it
 * carries a stated share. What holds after any sound reading of the instrument is right; what holds after all of them by a
 * wide margin should have been named. Naming nothing earns nothing, unless nothing needs a name.
 */
export function implicationOf(
  { clears, suspects }: Pick<FindingAct, 'clears' | 'suspects'>,
  before: AreaShares,
  after: readonly [AreaShares, ...AreaShares[]],
  thresholds: Thresholds,
): Implication {
  const judge = (named: readonly Area[], holds: typeof isCleared) =>
    named.map((area) => ({
      area,
      right: after.some((one) => holds(before[area], one[area], thresholds)),
      before: before[area],
      after: after[0][area],
    }));
  const [cleared, suspected] = [judge(clears, isCleared), judge(suspects, isSuspect)];
  const plain = areas.filter((area) => isPlain(area, before, after, thresholds));
  const missed = plain.filter((area) => !clears.includes(area) && !suspects.includes(area));
  const share = shareOfNamed([...cleared, ...suspected], plain.length, missed.length, thresholds);
  return { clears: cleared, suspects: suspected, missed, share };
}

function isCleared(before: number, after: number, { clearedBelow, hardly }: Thresholds): boolean {
  return after < clearedBelow * before || after < hardly;
}

function isSuspect(_before: number, after: number, { suspectFrom }: Thresholds): boolean {
  return after >= suspectFrom;
}

function isPlain(area: Area, before: AreaShares, after: readonly AreaShares[], { plain }: Thresholds): boolean {
  const gone = before[area] >= plain.from && after.every((one) => one[area] < plain.clearedBelow * before[area]);
  return gone || after.every((one) => one[area] >= plain.suspectFrom);
}

/** Share of the named that are right, less what was left unnamed. */
function shareOfNamed(
  named: readonly NamedArea[],
  plain: number,
  missed: number,
  { missed: cost }: Thresholds,
): number {
  if (named.length === 0) return plain === 0 ? 1 : 0;
  const right = named.filter((one) => one.right).length / named.length;
  return plain === 0 ? right : right * (1 - (cost * missed) / plain);
}
