import type { PoolTopic } from '../competency/pool';
import { information } from '../competency/task-model';
import type { SittingRules } from './sitting-rules';

/** A case or a question that a sitting may give. */
export interface SittingTask {
  id: string;
  kind: 'case' | 'question';
  /** Names the seed or the written question: nobody is given the same twice. */
  exposure: string;
  /** Those alike that are not to follow each other, such as questions of one kind. */
  family: string;
  topics: readonly PoolTopic[];
  /** How long somebody who knows takes. */
  seconds: number;
  /** How often it was given, to anybody. */
  exposures: number;
}

/** A task with what it tells at the cuts, worked out once for all steps of a sitting. */
export interface PreparedTask<Task extends SittingTask = SittingTask> {
  task: Task;
  /** By the topic's place in the rules: information at its cut, a minute of work. 0 where the task does not touch it. */
  perMinute: Float64Array;
  /** It was given so often that others come first. */
  heldBack: boolean;
}

export interface SittingPool<Task extends SittingTask = SittingTask> {
  tasks: readonly PreparedTask<Task>[];
  /** By the topic's place in the rules: those that touch it. */
  byTopic: readonly (readonly PreparedTask<Task>[])[];
}

/** A task that was given so many times as often as the mean task is held back. Common practice of exposure control, the figure assumed. */
const OFTEN = 2;
/** So often a task may be given whatever the others were, so that a new pool is not at once held back. */
const NEW = 3;

/** What a sitting by these rules may give. Tasks that touch none of its topics stay out. */
export function sittingPool<Task extends SittingTask>(tasks: readonly Task[], rules: SittingRules): SittingPool<Task> {
  const places = new Map(rules.topics.map(({ topic }, place) => [topic, place]));
  const often = NEW + OFTEN * (tasks.reduce((sum, { exposures }) => sum + exposures, 0) / Math.max(1, tasks.length));
  const prepared = tasks
    .map((task) => ({ task, perMinute: worthOf(task, rules, places), heldBack: task.exposures > often }))
    .filter(({ perMinute }) => perMinute.some((worth) => worth > 0));
  const touching = (place: number) => prepared.filter(({ perMinute }) => (perMinute[place] as number) > 0);
  return { tasks: prepared, byTopic: rules.topics.map((_, place) => touching(place)) };
}

function worthOf({ topics, seconds }: SittingTask, rules: SittingRules, places: ReadonlyMap<string, number>) {
  const worth = new Float64Array(rules.topics.length);
  for (const { topic, model } of topics) {
    const place = places.get(topic);
    const cut = place === undefined ? undefined : rules.topics[place]?.cut;
    if (place !== undefined && cut !== undefined) worth[place] = information(model, cut) / (seconds / 60);
  }
  return worth;
}
