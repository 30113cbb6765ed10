import type { Area } from '../areas';
import type { Truth } from '../cases/case';
import type { Verdict } from '../checks/verdict';
import type { ExpertStep } from '../diagnosis/expert-route';
import type { RouteStep } from '../diagnosis/next-check';
import type { ConditionId } from '../rig/condition';

export const parts = ['verdicts', 'reasons', 'call', 'route', 'practice'] as const;
export type Part = (typeof parts)[number];

/** A reason for points won or lost, as a code with its numbers; the app has the sentence. */
export interface Note {
  part: Part;
  code: string;
  /**
   * Numbers as they are said: points, minutes, percent. Ids stand under what they name: `check`, `condition`, `instrument`,
   * `repair`, `step`, `cause`, `area`; `seq` is a reading's, `finding` a finding's.
   */
  values: Record<string, number | string>;
  /** Points won (+) or lost (−) by it; those of one part sum to its points. Absent from grades stored before it was. */
  points?: number;
}

export type AreaShares = Readonly<Record<Area, number>>;

/** An area that the learner named, with its share before and after the reading. */
export interface NamedArea {
  area: Area;
  right: boolean;
  before?: number;
  after?: number;
}

/** Fields marked optional are absent from grades stored before they were computed. */
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
  /** 1 within half a division, 0.5 within one, else 0; null where there was no dial. */
  dialShare?: number | null;
  /** 0…1, with the dial in it. */
  verdictShare?: number;
  /**
   * Where cannot tell was right: a later reading of the same quantity settled it. Null where it was not the answer, and
   * where no instrument or condition could have settled it.
   */
  settledLater?: boolean | null;
  /** 0…1: limit, comparison, implication. */
  reasonShare?: number;
  clears: readonly NamedArea[];
  suspects: readonly NamedArea[];
  /** Areas that the reading plainly cleared or left leading, and that the learner named on neither side. */
  missed?: readonly Area[];
  /** Belief after this finding. */
  areas?: AreaShares;
}

/** One reading of the learner, judged by what was known at that moment. */
export interface StepGrade extends RouteStep {
  seq: number;
  /** Expected drop of the entropy of the repair decision, nats; per minute of the check. */
  gain: number;
  perMinute: number;
  /** What would have told most per minute then; null where nothing would have told anything. */
  best: (RouteStep & { perMinute: number }) | null;
  /** Share of its minutes that were well spent, 0…1. */
  credit: number;
  /** Belief after it. */
  areas: AreaShares;
}

/** How belief went, the learner's way and the expert's. */
export interface Course {
  /** Belief once the work order is read. */
  start: AreaShares;
  steps: readonly StepGrade[];
  expert: readonly ExpertStep[];
}

export interface SafetyEvent {
  seq: number;
  code: 'instrument-destroyed' | 'high-pressure-jet' | 'cranked-low-range';
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
  /** By what it was marked. Absent from older grades, like every field marked optional. */
  rubric?: { id: string; version: number };
  /** A safety event held the total down. */
  capped: boolean;
  /** Ordered score for the competency model; a safety event caps it at 1. */
  score?: 0 | 1 | 2 | 3 | 4;
  /** Hints asked for. */
  hints?: number;
  /** Of the case, logits. */
  difficulty?: number;
  course?: Course;
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
