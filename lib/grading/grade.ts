import type { Area } from '../areas';
import type { Truth } from '../cases/case';
import type { Verdict } from '../checks/verdict';
import type { RouteStep } from '../diagnosis/expert-route';
import type { ConditionId } from '../rig/condition';

export const parts = ['verdicts', 'reasons', 'call', 'route', 'practice'] as const;
export type Part = (typeof parts)[number];

/** How much each part weighs; they sum to 100. */
export type Rubric = Readonly<Record<Part, number>>;
export const defaultRubric: Rubric = { verdicts: 25, reasons: 25, call: 30, route: 10, practice: 10 };

/** No grade rises above this once something dangerous was done. */
export const SAFETY_CAP = 40;

/** A reason for points won or lost, as a code with its numbers; the app has the sentence. */
export interface Note {
  part: Part;
  code: string;
  values: Record<string, number | string>;
}

/** Part of full marks, 0…1, and why. */
export interface Score {
  share: number;
  notes: readonly Note[];
}

export interface FindingGrade {
  seq: number;
  check: string;
  condition: ConditionId;
  quantity: string;
  expectedVerdict: Verdict;
  verdictRight: boolean;
  /** What the instrument showed and its standard uncertainty, SI; null where it showed codes. */
  shown: number | null;
  uncertainty: number | null;
  /** The line that applies; null where the sheet has none. */
  limit: string | null;
  limitRight: boolean;
  comparisonRight: boolean;
  /** Null where there was no dial to read. */
  dialRight: boolean | null;
  clears: readonly { area: Area; right: boolean }[];
  suspects: readonly { area: Area; right: boolean }[];
}

export interface SafetyEvent {
  seq: number;
  code: 'instrument-destroyed' | 'high-pressure-jet';
}

/** A reading that the repair moved, true values in SI. */
export interface AfterRepair {
  check: string;
  condition: ConditionId;
  quantity: string;
  limit: string;
  before: number;
  after: number;
  verdictBefore: Verdict;
  verdictAfter: Verdict;
}

export interface Grade {
  /** 0…100. */
  total: number;
  /** A safety event held the total down. */
  capped: boolean;
  parts: readonly { part: Part; points: number; outOf: number }[];
  truth: Truth;
  callCorrect: { cause: boolean; area: boolean; repair: boolean; proof: boolean };
  minutes: number;
  expertRoute: readonly RouteStep[];
  findings: readonly FindingGrade[];
  notes: readonly Note[];
  safetyEvents: readonly SafetyEvent[];
  afterRepair: readonly AfterRepair[];
}
