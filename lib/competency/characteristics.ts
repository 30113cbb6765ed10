import { type RandomStream, randomStream } from '../random';
import { type DecisionRule, decideTopic } from './decide';
import type { Decision } from './decision';
import { chanceAtOrAbove, neutralPrior, type Posterior, posteriorFrom } from './posterior';
import { emptyTally, withResponse } from './tally';
import { chance, highestScore, type TaskModel } from './task-model';

/** A way of deciding about one topic, task by task. */
export interface Procedure {
  /** Each is given once at most. */
  bank: readonly TaskModel[];
  /** Logits. */
  cut: number;
  rule: DecisionRule;
  /** Responses after which it stays undecided. */
  maximum: number;
  /** Which of those left comes next; undefined where none should. */
  next(left: readonly TaskModel[], posterior: Posterior, random: RandomStream): TaskModel | undefined;
}

/** What comes of people of one true ability; shares, 0…1, that sum to 1. */
export interface Characteristic {
  theta: number;
  ready: number;
  notYet: number;
  undecided: number;
  /** Mean number of responses. */
  responses: number;
}

/**
 * How often a procedure decides what, of so many simulated people at each true ability, who answer as the models say.
 *
 * @param people  At each ability; a share errs by √(share · (1 − share) / people).
 */
export function characteristicsOf(
  procedure: Procedure,
  thetas: readonly number[],
  { people, seed }: { people: number; seed: string },
): Characteristic[] {
  return thetas.map((theta) => {
    const random = randomStream(seed, `characteristics ${theta}`);
    const runs = Array.from({ length: people }, () => run(procedure, theta, random));
    const share = (decision: Decision) => runs.filter((one) => one.decision === decision).length / people;
    return {
      theta,
      ready: share('ready'),
      notYet: share('not-yet'),
      undecided: share('not-enough-evidence'),
      responses: runs.reduce((sum, { responses }) => sum + responses, 0) / people,
    };
  });
}

function run({ bank, cut, rule, maximum, next }: Procedure, theta: number, random: RandomStream) {
  let left = bank;
  let tally = emptyTally;
  for (;;) {
    const posterior = posteriorFrom(neutralPrior, tally.sum);
    const decision = decideTopic({ chance: chanceAtOrAbove(posterior, cut), count: tally.count }, rule);
    const model =
      decision === 'not-enough-evidence' && tally.count < maximum ? next(left, posterior, random) : undefined;
    if (!model) return { decision, responses: tally.count };
    left = left.filter((other) => other !== model);
    tally = withResponse(tally, { at: 0, model, score: drawScore(model, theta, random), weight: 1 }, null);
  }
}

/** A score as somebody of a true ability would earn it. */
export function drawScore(model: TaskModel, theta: number, random: RandomStream): number {
  let left = random.next();
  const highest = highestScore(model);
  for (let score = 0; score < highest; score++) {
    left -= chance(model, score, theta);
    if (left < 0) return score;
  }
  return highest;
}
