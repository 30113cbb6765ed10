import { chance, highestScore, type TaskModel } from '@/lib/competency/task-model';
import { type RandomStream, randomStream } from '@/lib/random';
import { nextStep, type SittingEnd, type Step } from '@/lib/readiness/sitting';
import { type SittingTask, sittingPool } from '@/lib/readiness/sitting-pool';
import type { SittingRules } from '@/lib/readiness/sitting-rules';
import { afterTask, type SittingState, sittingOf } from '@/lib/readiness/sitting-state';

/** What the figures of a made-up pool are: shares of what the installation's own holds. */
export interface PoolShape {
  topics: readonly string[];
  cases: number;
  questions: number;
}

/** A pool with its difficulties spread over −2…2 logits, drawn from a seed. Each case touches three topics. */
export function madeUpPool({ topics, cases, questions }: PoolShape, seed: string): SittingTask[] {
  const draw = randomStream(seed, 'pool');
  const topicAt = (at: number) => topics[at % topics.length] ?? '';
  const ofCase = (at: number) => [...new Set([at, at + 1 + (at % 2), at + 4].map(topicAt))];
  return [
    ...Array.from({ length: cases }, (_, at) => {
      const model = stepsAround(draw.between(-2, 2));
      return taskOf(
        'case',
        `case ${at}`,
        ofCase(at).map((topic) => ({ topic, model })),
        480,
      );
    }),
    ...Array.from({ length: questions }, (_, at) => {
      const model: TaskModel = {
        kind: 'choice',
        difficulty: draw.between(-2, 2),
        floor: at % 3 ? 0.25 : 0,
        spread: 0.5,
      };
      return { ...taskOf('question', `question ${at}`, [{ topic: topicAt(at), model }], 60), family: `kind ${at % 4}` };
    }),
  ];
}

export interface Sat {
  steps: readonly Extract<Step, { task: unknown }>[];
  /** The state before each step, and after the last. */
  states: readonly SittingState[];
  end: SittingEnd;
}

/** A sitting of somebody whose answers follow the models, from its beginning to its end. */
export function sit(
  tasks: readonly SittingTask[],
  rules: SittingRules,
  abilityOn: (topic: string) => number,
  seed: string,
): Sat {
  const pool = sittingPool(tasks, rules);
  const answers = randomStream(seed, 'answers');
  const steps: Sat['steps'][number][] = [];
  const states: SittingState[] = [sittingOf()];
  for (;;) {
    const state = states.at(-1) as SittingState;
    const step = nextStep(state, pool, rules, randomStream(seed, `step ${steps.length + 1}`));
    if ('end' in step) return { steps, states, end: step.end };
    steps.push(step);
    states.push(afterTask(state, step.task, told(step.task, abilityOn, answers), state.elapsed + step.task.seconds));
  }
}

/** A response on each topic of a task, drawn as its model says. */
function told({ topics }: Pick<SittingTask, 'topics'>, abilityOn: (topic: string) => number, draw: RandomStream) {
  return topics.map(({ topic, model }) => ({ topic, model, score: scoreOf(model, abilityOn(topic), draw.next()) }));
}

function scoreOf(model: TaskModel, ability: number, at: number): number {
  let [score, left] = [0, at];
  while (score < highestScore(model) && left >= chance(model, score, ability)) left -= chance(model, score++, ability);
  return score;
}

function stepsAround(difficulty: number): TaskModel {
  return { kind: 'steps', steps: [-1.5, -0.5, 0.5, 1.5].map((step) => difficulty + step), spread: 0.5 };
}

function taskOf(kind: SittingTask['kind'], id: string, topics: SittingTask['topics'], seconds: number): SittingTask {
  return { id, kind, exposure: id, family: id, topics, seconds, exposures: 0 };
}
