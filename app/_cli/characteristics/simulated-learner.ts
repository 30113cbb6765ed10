import { drawScore } from '@/lib/competency/characteristics';
import { evidenceOfQuestion } from '@/lib/competency/evidence-of-question';
import { DESIGN_SPREAD, type Response } from '@/lib/competency/response';
import type { TaskModel } from '@/lib/competency/task-model';
import type { Answer } from '@/lib/questions/answer';
import { markAnswer } from '@/lib/questions/mark';
import type { GeneratedQuestion } from '@/lib/questions/question';
import { type RandomStream, randomStream } from '@/lib/random';
import type { Told } from '@/lib/readiness/sitting-state';
import { answerQuestion } from '../demo/answer-question';
import { evidenceOf, type RealTask } from './real-pool';
import { someAnswer } from './some-answer';
import { workOfLevel } from './work-of-level';

/*
 * The simulated learner. On each task the level of the work is drawn from the task's model at the true ability, with the task's
 * true difficulty drawn from what is known of it. The work is then done: readings, findings and a call of that level, or an
 * answer that earns as much; and what counts is what the grader and the rule of evidence make of it. One case is one level on
 * every topic that it touches. The same work at the same case is graded once.
 */

/** Works of one level at one case that are told apart by the stream that draws what goes wrong. */
const VARIANTS = 2;

/** What learners do at the tasks of a pool, with the grades already given. */
export class Workshop {
  private readonly graded = new Map<string, readonly Told[]>();
  /** Levels that were meant, by those that were returned: one a work and topic. */
  readonly meant: number[][] = Array.from({ length: 5 }, () => [0, 0, 0, 0, 0]);

  constructor(private readonly topics: readonly string[]) {}

  /** What somebody of an ability shows at a task. */
  show(task: RealTask, ability: number, draw: RandomStream): readonly Told[] {
    const model = task.topics[0]?.model;
    if (!model) return [];
    const level = drawScore(atTrueDifficulty(model, draw), ability, draw);
    const variant = Math.floor(draw.next() * VARIANTS);
    const key = `${task.id} ${level} ${variant}`;
    const known = this.graded.get(key) ?? this.grade(task, level, key);
    this.graded.set(key, known);
    return known;
  }

  private grade(task: RealTask, level: number, key: string): readonly Told[] {
    const draw = randomStream(key, 'work of a level');
    const told = task.kind === 'case' ? caseTold(task, level, draw) : questionTold(task.question, level, draw);
    const counted = told.filter(({ topic }) => this.topics.includes(topic));
    if (task.kind === 'case')
      for (const { score } of counted) (this.meant[level] as number[])[score] = (this.meant[level]?.[score] ?? 0) + 1;
    return counted;
  }
}

function caseTold(task: Extract<RealTask, { kind: 'case' }>, level: number, draw: RandomStream): Told[] {
  return evidenceOf(
    task.job,
    workOfLevel(task.job, () => level, draw),
  );
}

/** Answers that are tried before the nearest is given. */
const TRIES = 200;

/** What an answer tells that earns so many steps, or the nearest that there is. */
function questionTold(question: GeneratedQuestion, level: number, draw: RandomStream): readonly Told[] {
  const told = (answer: Answer) =>
    evidenceOfQuestion(
      { asked: question, answered: true, points: markAnswer(question, answer).score },
      { logits: question.difficulty, spread: DESIGN_SPREAD },
      RESPONSE,
    );
  const off = (one: readonly Told[]) => Math.abs((one[0]?.score ?? 0) - level);
  let best = told(answerQuestion(question, true, draw));
  for (let tried = 0; tried < TRIES && off(best) > 0; tried++) {
    const other = told(someAnswer(question, draw));
    if (off(other) < off(best)) best = other;
  }
  return best;
}

const RESPONSE: Response = {
  work: '',
  counts: true,
  hints: 0,
  exposure: '',
  purpose: 'assessed',
  at: 0,
  versions: { content: '', generator: 0 },
};

function atTrueDifficulty(model: TaskModel, draw: RandomStream): TaskModel {
  const shift = model.spread * normal(draw);
  return model.kind === 'choice'
    ? { ...model, difficulty: model.difficulty + shift, spread: 0 }
    : { ...model, steps: model.steps.map((step) => step + shift), spread: 0 };
}

/** @source Box & Muller 1958. */
export function normal(draw: RandomStream): number {
  return Math.sqrt(-2 * Math.log(1 - draw.next())) * Math.cos(2 * Math.PI * draw.next());
}
