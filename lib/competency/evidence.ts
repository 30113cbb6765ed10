import type { TaskModel } from './task-model';

/** Under which circumstances something was shown. */
export const evidencePurposes = ['practice', 'assessed', 'intake', 'observed'] as const;
export type EvidencePurpose = (typeof evidencePurposes)[number];

/** What the response was to: a case, a question, or something done by hand under somebody's eyes. */
export const evidenceSources = ['case', 'question', 'observation'] as const;
export type EvidenceSource = (typeof evidenceSources)[number];

/** Under which versions it was made and marked. */
export interface EvidenceVersions {
  content: string;
  /** Of the generator of cases or of questions. */
  generator: number;
  rubric?: string;
}

/** One graded response on one topic. */
export interface Evidence {
  topic: string;
  source: EvidenceSource;
  /** The response: `attempt <id>`, `sitting <id> <place>` or `observation <id>`. */
  work: string;
  /** From 1; of one response on one topic only the last revision counts. */
  revision: number;
  /** False once it was withdrawn. */
  counts: boolean;
  /** 0…m of the model. */
  score: number;
  model: TaskModel;
  hints: number;
  /** Names the seed or the written question: what was met before shows less. */
  exposure: string;
  /** Safety-critical acts in it. */
  safetyEvents: number;
  purpose: EvidencePurpose;
  /** When it was given, ms. */
  at: number;
  versions: EvidenceVersions;
  /** What in the work it rests on. */
  detail: EvidenceDetail;
}

/** Findings (by `seq`) and parts that made the score, so that one can look them up. */
export interface EvidenceDetail {
  findings: readonly number[];
  /** Share of what the topic could earn, 0…1. */
  share: number;
  /** Why the response tests the topic: a code of the rule. */
  because: string;
}
