import type { RoleProfile } from './profile';

/** A topic that an adaptive sitting decides on. */
export interface SittingTopic {
  topic: string;
  /** Ability that counts as enough, logits. */
  cut: number;
  confidence: number;
  /** Of the responses, in proportion to the others. */
  share: number;
  /** Responses before anything is decided. */
  atLeast: number;
}

/** What an adaptive sitting has to come to, and within what. */
export interface SittingRules {
  topics: readonly SittingTopic[];
  /** A chance of being at the cut or above that is at most so large means not yet. */
  refuse: number;
  /** Responses a topic after which it is left undecided. */
  maximum: number;
  /** Cases without which nothing can be said of how safely somebody works. */
  cases: number;
  /** How long it may take. */
  seconds: number;
}

/** Rules of a new-hire check: every topic in equal shares. */
export function rulesOf(profile: RoleProfile): SittingRules {
  const { topics, refuse, minimum, maximum, safety, minutes } = profile;
  return {
    topics: topics.map((topic) => ({ ...topic, share: 1, atLeast: minimum })),
    refuse,
    maximum,
    cases: safety.atLeast,
    seconds: minutes * 60,
  };
}
