import type { Area } from '../areas';
import type { Shown } from '../checks/shown';
import type { Comparison, Verdict } from '../checks/verdict';
import type { ConditionId } from '../rig/condition';
import type { Unit } from '../units';

/** A gauge hooked up and read. */
export interface ReadingAct {
  kind: 'reading';
  check: string;
  condition: ConditionId;
  instrument: string;
  shown: readonly Shown[];
}

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
  /** Line of the rig's limit sheet; null says that the sheet has none for this reading. */
  limit: string | null;
  clears: readonly Area[];
  suspects: readonly Area[];
  words: string;
}

/** A cause, what to do about it, and the check that would show that it worked. */
export interface Answer {
  cause: string;
  repair: string;
  proof: { check: string; condition: ConditionId };
}

/** A hint that a coached learner asked for: the check that would tell most at that moment. Null where none tells anything. */
export interface HintAct {
  kind: 'hint';
  next: { check: string; condition: ConditionId; instrument: string } | null;
}

/** The learner's final answer. */
export interface CallAct extends Answer {
  kind: 'call';
  /** A second cause, where the learner thinks that there are two. */
  also?: Answer;
  /** What the learner says has to be put right before the vehicle goes: ids of restoring steps. Absent in older attempts. */
  restored?: readonly string[];
}

export type Act = ReadingAct | FindingAct | HintAct | CallAct;

/** An act as stored: numbered within its attempt from 1. */
export type StoredAct = Act & { seq: number };

/** Instruments that an earlier reading of the attempt destroyed. */
export function instrumentsDestroyed(acts: readonly Act[]): Set<string> {
  const readings = acts.filter((act) => act.kind === 'reading');
  return new Set(
    readings.filter(({ shown }) => shown.some(({ kind }) => kind === 'destroyed')).map((act) => act.instrument),
  );
}
