import type { Area } from '../areas';
import type { ConditionId } from '../rig/condition';
import type { Unit } from '../units';

/** What an instrument showed. Recorded with the act, so that a later version of the content cannot change it. */
export type Shown =
  /** `value` in the instrument's own unit, at its resolution. */
  | { kind: 'value'; quantity: string; value: number; unit: Unit }
  /** The pointer stopped at the end of the range. */
  | { kind: 'off-scale'; quantity: string; end: 'low' | 'high'; limit: number; unit: Unit }
  | { kind: 'codes'; quantity: string; codes: readonly { spn: number; fmi: number }[] }
  /** The computed pressure was beyond what the instrument survives. */
  | { kind: 'destroyed'; quantity: string };

/** A gauge hooked up and read. */
export interface ReadingAct {
  kind: 'reading';
  check: string;
  condition: ConditionId;
  instrument: string;
  shown: readonly Shown[];
}

export const verdicts = ['pass', 'fail', 'cannot-tell'] as const;
export type Verdict = (typeof verdicts)[number];

export const comparisons = ['below', 'within', 'above', 'too-close'] as const;
export type Comparison = (typeof comparisons)[number];

/** A reading with the learner's verdict and reason. */
export interface FindingAct {
  kind: 'finding';
  /** `seq` of the reading it judges. */
  reading: number;
  quantity: string;
  /** What the learner read from a dial; null where the instrument prints its value. */
  entered: { value: number; unit: Unit } | null;
  verdict: Verdict;
  comparison: Comparison;
  /** Line of the rig's limit sheet. */
  limit: string;
  clears: readonly Area[];
  suspects: readonly Area[];
  words: string;
}

/** The learner's final answer. */
export interface CallAct {
  kind: 'call';
  cause: string;
  repair: string;
  proof: { check: string; condition: ConditionId };
}

export type Act = ReadingAct | FindingAct | CallAct;

/** An act as stored: numbered within its attempt from 1. */
export type StoredAct = Act & { seq: number };
