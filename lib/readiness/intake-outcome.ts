import type { Decision } from '../competency/decision';

/** What is known of somebody on one required topic. */
export interface TopicStanding {
  topic: string;
  cut: number;
  confidence: number;
  decision: Decision;
  /** Chance of being at the cut or above, 0…1. */
  chance: number;
  /** Ability and its 90 % interval, logits. */
  mean: number;
  interval: readonly [number, number];
  /** Responses it rests on, and cases among them. */
  responses: number;
  cases: number;
  /** Of the newest response, ms; null without any. */
  newestAt: number | null;
}

/** Whether the work was safe enough to decide on. */
export interface SafetyStanding {
  /** `clean`, a safety-critical act among the newest cases, or too few cases to say. */
  code: 'clean' | 'unsafe' | 'too-few-cases';
  cases: number;
  events: number;
}

/** What somebody's evidence says of them in a role. */
export interface Standing {
  profileId: string;
  profileVersion: number;
  decision: Decision;
  topics: readonly TopicStanding[];
  safety: SafetyStanding;
  /** When it was worked out, ms. */
  at: number;
}

/** What a new-hire check came to. */
export type IntakeOutcome = Standing & { tasks: number; minutes: number };
