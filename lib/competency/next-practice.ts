import type { RandomStream } from '../random';
import { bestOf } from './choose';
import type { Contender, PoolTopic } from './pool';
import { expectedInformation, type Posterior, spreadOf } from './posterior';

/** Where somebody stands on a topic. */
export interface Standpoint {
  posterior: Posterior;
  responses: number;
  /** Age alone has taken from it what the eye sees. */
  fades: boolean;
}

/** Why something is to be practised next: nothing was shown there, what was shown fades, or it lies at the edge of ability. */
export const practiceReasons = ['untested', 'fading', 'edge'] as const;
export type PracticeReason = (typeof practiceReasons)[number];

export interface PracticeTask {
  id: string;
  /** Those alike that are not to follow each other. */
  family: string;
  topics: readonly PoolTopic[];
  seconds: number;
}

export interface NextPractice<Task> {
  task: Task;
  /** The topic of which it is expected to tell most. */
  topic: string;
  reason: PracticeReason;
  /** Those that it was drawn among, the worthiest first. */
  contenders: readonly Contender[];
}

/** How much more what is untested or fades counts. Assumed. */
const FAVOUR: Readonly<Record<PracticeReason, number>> = { untested: 2, fading: 1.5, edge: 1 };

/**
 * What somebody is to practise next: one among the five tasks that are expected to tell most of them for a minute of work. What it
 * tells of a topic is its information averaged over where they may stand, times how uncertain that is.
 *
 * @param tasks  Those that they have not met.
 * @param standpoints  By topic; topics that are not there are not looked at.
 * @param lately  Families of the last tasks; theirs come only where there is nothing else.
 * @returns undefined where nothing is left.
 * @source Posterior-weighted information: van der Linden 1998 (from memory).
 */
export function nextPractice<Task extends PracticeTask>(
  tasks: readonly Task[],
  standpoints: ReadonlyMap<string, Standpoint>,
  lately: ReadonlySet<string>,
  random: RandomStream,
): NextPractice<Task> | undefined {
  const weights = new Map(
    [...standpoints].map(([topic, one]) => [topic, spreadOf(one.posterior) ** 2 * favourOf(one)]),
  );
  const tells = ({ topic, model }: PoolTopic) => {
    const standpoint = standpoints.get(topic);
    return standpoint ? expectedInformation(standpoint.posterior, model) * (weights.get(topic) ?? 0) : 0;
  };
  const worth = ({ topics, seconds }: Task) => topics.reduce((sum, one) => sum + tells(one), 0) / (seconds / 60);
  const apart = tasks.filter(({ family }) => !lately.has(family));
  const best = bestOf(apart.length > 0 ? apart : tasks, worth);
  if (best.length === 0) return undefined;
  const task = random.pick(best).candidate;
  const [most] = [...task.topics].sort((one, other) => tells(other) - tells(one));
  const standpoint = most && standpoints.get(most.topic);
  if (!most || !standpoint) return undefined;
  const contenders = best.map(({ candidate, worth: own }) => ({ poolTaskId: candidate.id, worth: own }));
  return { task, topic: most.topic, reason: reasonOf(standpoint), contenders };
}

function reasonOf({ responses, fades }: Standpoint): PracticeReason {
  if (responses === 0) return 'untested';
  return fades ? 'fading' : 'edge';
}

function favourOf(standpoint: Standpoint): number {
  return FAVOUR[reasonOf(standpoint)];
}
