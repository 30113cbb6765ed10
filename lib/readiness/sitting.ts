import { bestOf } from '../competency/choose';
import type { TaskChoice } from '../competency/pool';
import type { RandomStream } from '../random';
import type { PreparedTask, SittingPool, SittingTask } from './sitting-pool';
import type { SittingRules } from './sitting-rules';
import { phaseOfTopic, type SittingState } from './sitting-state';

/** Why a sitting ends: each topic decided, as much asked as may be or can be, or no time for another task. */
export const sittingEnds = ['decided', 'all-asked', 'time'] as const;
export type SittingEnd = (typeof sittingEnds)[number];

/** The task that a sitting gives next with the reason why, or why it ends. */
export type Step<Task extends SittingTask = SittingTask> =
  | { task: Task; choice: Omit<TaskChoice, 'stream'> }
  | { end: SittingEnd };

/** Tasks of one family lie so many tasks apart, as long as there are others. Assumed. */
const APART = 3;

/**
 * What an adaptive sitting does next. The topic is the undecided one that lies furthest behind its share of the responses; of the
 * tasks that touch it, one among the five that tell most at the cuts of all undecided topics for a minute of work. Left out is
 * what the person has met and what the time does not hold; held back is what was given often, and what is like one of the last
 * tasks. While cases are owed, at least every second task is one.
 *
 * @param random  A stream of its own for each step, so that the step can be replayed.
 * @source Maximum information at the cut: Spray & Reckase 1996; share of the topics: Kingsbury & Zara 1989; one among the best:
 *   Kingsbury & Zara 1989 (all from memory).
 */
export function nextStep<Task extends SittingTask>(
  state: SittingState,
  pool: SittingPool<Task>,
  rules: SittingRules,
  random: RandomStream,
): Step<Task> {
  const left = rules.seconds - state.elapsed;
  if (left <= 0) return { end: 'time' };
  const phases = rules.topics.map((topic) => phaseOfTopic(state, topic, rules));
  const open = [...phases.keys()].filter((place) => phases[place] === 'open');
  const owed = rules.cases - state.given.filter(({ kind }) => kind === 'case').length;
  if (open.length === 0 && owed <= 0) return { end: phases.includes('given-up') ? 'all-asked' : 'decided' };

  const places = open.length > 0 ? byLag(open, state, rules) : [...phases.keys()];
  const kinds: Kinds = open.length === 0 ? 'cases' : isCaseDue(state, owed) ? 'cases-first' : 'any';
  const found = find(
    places,
    kinds,
    (place) => pool.byTopic[place]?.filter((one) => isNew(one, state) && one.task.seconds <= left) ?? [],
  );
  if (found) return drawn(found, places, { state, rules, random });
  const unmet = places.some((place) =>
    pool.byTopic[place]?.some((one) => isNew(one, state) && (kinds !== 'cases' || isCase(one))),
  );
  return { end: unmet ? 'time' : 'all-asked' };
}

/** Undecided topics on which there is nothing left that the person has not met. */
export function topicsRunDry(state: SittingState, pool: SittingPool, rules: SittingRules): string[] {
  return rules.topics.flatMap((topic, place) => {
    if (phaseOfTopic(state, topic, rules) !== 'open' || pool.byTopic[place]?.some((one) => isNew(one, state)))
      return [];
    return [topic.topic];
  });
}

type Kinds = 'any' | 'cases-first' | 'cases';

interface Found<Task extends SittingTask> {
  /** The topic's place in the rules. */
  place: number;
  candidates: readonly PreparedTask<Task>[];
}

/** The topic furthest behind first: responses against its share; of equals, the one that the rules name first. */
function byLag(places: readonly number[], { tallies }: SittingState, { topics }: SittingRules): number[] {
  const lag = (place: number) => {
    const { topic, share } = topics[place] as SittingRules['topics'][number];
    return (tallies.get(topic)?.count ?? 0) / share;
  };
  return [...places].sort((one, other) => lag(one) - lag(other) || one - other);
}

function isCaseDue({ given }: SittingState, owed: number): boolean {
  return owed > 0 && given.at(-1)?.kind === 'question';
}

/** The first topic that has candidates, of the kinds that are looked for. */
function find<Task extends SittingTask>(
  places: readonly number[],
  kinds: Kinds,
  candidatesAt: (place: number) => readonly PreparedTask<Task>[],
): Found<Task> | undefined {
  if (kinds !== 'any') {
    const cases = first(places, (place) => candidatesAt(place).filter(isCase));
    if (cases || kinds === 'cases') return cases;
  }
  return first(places, candidatesAt);
}

function first<Task extends SittingTask>(
  places: readonly number[],
  candidatesAt: (place: number) => readonly PreparedTask<Task>[],
): Found<Task> | undefined {
  for (const place of places) {
    const candidates = candidatesAt(place);
    if (candidates.length > 0) return { place, candidates };
  }
  return undefined;
}

function drawn<Task extends SittingTask>(
  { place, candidates }: Found<Task>,
  looked: readonly number[],
  { state, rules, random }: { state: SittingState; rules: SittingRules; random: RandomStream },
): Step<Task> {
  const worth = ({ perMinute }: PreparedTask) => looked.reduce((sum, at) => sum + (perMinute[at] as number), 0);
  const best = bestOf(preferred(candidates, state), worth);
  const { task } = random.pick(best).candidate;
  const contenders = best.map(({ candidate, worth }) => ({ poolTaskId: candidate.task.id, worth }));
  return { task, choice: { topic: rules.topics[place]?.topic ?? '', by: 'cut', contenders } };
}

/** Those that were neither given often nor are like one of the last tasks; where there are none, one of the two is let go. */
function preferred<Task extends SittingTask>(candidates: readonly PreparedTask<Task>[], { given }: SittingState) {
  const last = new Set(given.slice(-APART).map(({ family }) => family));
  const rested = candidates.filter(({ heldBack }) => !heldBack);
  const apart = (from: readonly PreparedTask<Task>[]) => from.filter(({ task }) => !last.has(task.family));
  return [apart(rested), rested, apart(candidates)].find((some) => some.length > 0) ?? candidates;
}

function isNew({ task }: PreparedTask, { met }: SittingState): boolean {
  return !met.has(task.exposure);
}

function isCase({ task }: PreparedTask): boolean {
  return task.kind === 'case';
}
