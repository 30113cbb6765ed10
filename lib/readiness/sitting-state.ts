import { decideTopic } from '../competency/decide';
import { chanceAtOrAbove } from '../competency/posterior';
import { emptyTally, posteriorAt, type Tally, withResponse } from '../competency/tally';
import type { TaskModel } from '../competency/task-model';
import type { SittingTask } from './sitting-pool';
import type { SittingRules, SittingTopic } from './sitting-rules';

/** What a sitting has come to so far. */
export interface SittingState {
  /** By topic. */
  tallies: ReadonlyMap<string, Tally>;
  /** In the order in which they were given. */
  given: readonly Pick<SittingTask, 'kind' | 'family'>[];
  /** Exposures that the person has met, here or before. */
  met: ReadonlySet<string>;
  /** Seconds since it was begun. */
  elapsed: number;
}

/** A sitting that begins. */
export function sittingOf(met: Iterable<string> = []): SittingState {
  return { tallies: new Map(), given: [], met: new Set(met), elapsed: 0 };
}

/** What a task told of a topic. */
export interface Told {
  topic: string;
  model: TaskModel;
  score: number;
}

/**
 * The sitting after one task more, each response in full and without ageing.
 *
 * @param elapsed  Seconds since the sitting was begun.
 */
export function afterTask(
  state: SittingState,
  { kind, family, exposure }: Pick<SittingTask, 'kind' | 'family' | 'exposure'>,
  responses: readonly Told[],
  elapsed: number,
): SittingState {
  const tallies = new Map(state.tallies);
  for (const { topic, model, score } of responses) {
    const response = { at: elapsed * 1000, model, score, weight: 1 };
    tallies.set(topic, withResponse(tallies.get(topic) ?? emptyTally, response, null));
  }
  return { tallies, given: [...state.given, { kind, family }], met: new Set([...state.met, exposure]), elapsed };
}

export const topicPhases = ['open', 'decided', 'given-up'] as const;
/** `given-up`: as many responses as there may be, and still undecided. */
export type TopicPhase = (typeof topicPhases)[number];

/** Where a topic of a sitting stands. */
export function phaseOfTopic({ tallies }: SittingState, topic: SittingTopic, rules: SittingRules): TopicPhase {
  const tally = tallies.get(topic.topic);
  if (!tally) return 'open';
  const evidence = { chance: chanceAtOrAbove(posteriorAt(tally, tally.at, null), topic.cut), count: tally.count };
  const rule = { confidence: topic.confidence, refuse: rules.refuse, minimum: topic.atLeast };
  if (decideTopic(evidence, rule) !== 'not-enough-evidence') return 'decided';
  return tally.count >= rules.maximum ? 'given-up' : 'open';
}
