import { bestOf } from '@/lib/competency/choose';
import { GRID } from '@/lib/competency/grid';
import { chanceAtOrAbove, expectedInformation, type Posterior } from '@/lib/competency/posterior';
import { posteriorAt, type Response, type Tally, tallyOf, withResponse } from '@/lib/competency/tally';
import type { TaskModel } from '@/lib/competency/task-model';
import { type RandomStream, randomStream } from '@/lib/random';
import { plainChance, plainInformation, plainPosterior } from '../support/plain-competency';
import { rounds, type Spread, spreadOf } from './spread';

const TOPICS = Array.from({ length: 13 }, (_, at) => `topic ${at}`);
const RESPONSES = 5000;
const POOL = 2000;
const HALF_LIFE = 180;
const DAY = 86_400_000;
const CUT = 0.5;

/** Ours, and the same as a textbook has it: lists, a formula a point, nothing carried from one point to the next. */
export interface Pair {
  ours: Spread;
  plain: Spread;
}

export interface CompetencyFigures {
  /** Microseconds: a response on each of 13 topics taken in, and the chance of being at the cut. */
  update: Pair;
  /** Milliseconds: the tallies of 5,000 responses of one person over 13 topics. */
  rebuild: Pair;
  /** Milliseconds: what is best for somebody among 2,000 tasks, half of them cases on three topics. */
  choice: Pair;
}

export function measureCompetency(): CompetencyFigures {
  const random = randomStream('competency', 'bench');
  const log = Array.from({ length: RESPONSES }, () => ({ topic: random.pick(TOPICS), ...drawResponse(random) }));
  const byTopic = TOPICS.map((topic) => log.filter((response) => response.topic === topic));
  const tallies = byTopic.map((responses) => tallyOf(responses, HALF_LIFE));
  const fresh = drawResponse(random);
  const pool = Array.from({ length: POOL }, (_, at) => drawTask(random, at % 2 === 0));
  // Somebody on the way, ten responses a topic: long histories make narrow posteriors, which are quicker to look at.
  const posteriors = new Map(
    TOPICS.map((topic, at) => [topic, posteriorAt(tallyOf((byTopic[at] ?? []).slice(0, 10), null), NOW, null)]),
  );
  return {
    update: pair(
      () => tallies.map((tally) => chanceAfter(tally, fresh)),
      () => tallies.map((tally) => plainChanceAfter(tally, fresh)),
      1e3,
    ),
    rebuild: pair(
      () => byTopic.map((responses) => chanceOf(tallyOf(responses, HALF_LIFE))),
      () => byTopic.map((responses) => plainChanceOf(plainSum(responses))),
    ),
    choice: pair(
      () => bestOf(pool, (topics) => expectedOf(topics, posteriors)).map(({ worth }) => worth),
      () => plainBest(pool, posteriors),
    ),
  };
}

function expectedOf(topics: Task, posteriors: ReadonlyMap<string, Posterior>): number {
  return topics.reduce((sum, { topic, model }) => {
    const posterior = posteriors.get(topic);
    return posterior ? sum + expectedInformation(posterior, model) : sum;
  }, 0);
}

const NOW = 1000 * DAY;

/** A race counts only if both find the same. */
function pair(ours: () => number[], plain: () => number[], perMillisecond = 1): Pair {
  const [mine, other] = [ours(), plain()];
  for (const [at, value] of mine.entries())
    if (!(Math.abs(value - (other[at] ?? Number.NaN)) < 1e-6)) throw new Error(`${value} and ${other[at]} differ`);
  const spread = (times: number[]) => spreadOf(times.map((time) => time * perMillisecond));
  return { ours: spread(rounds(25, ours)), plain: spread(rounds(3, plain)) };
}

function chanceAfter(tally: Tally, response: Response): number {
  return chanceOf(withResponse(tally, response, HALF_LIFE));
}

function chanceOf(tally: Tally): number {
  return chanceAtOrAbove(posteriorAt(tally, NOW, HALF_LIFE), CUT);
}

function plainChanceAfter({ at, sum }: Tally, response: Response): number {
  const newest = Math.max(at, response.at);
  const older = [...sum].map((log) => log * left(at, newest));
  return plainChanceOf(addPlain(older, response, left(response.at, newest)).map((log) => log * left(newest, NOW)));
}

function plainSum(responses: readonly Response[]): number[] {
  const nothing = [...GRID].map(() => 0);
  return responses.reduce((sum, response) => addPlain(sum, response, left(response.at, NOW)), nothing);
}

function addPlain(sum: readonly number[], { model, score, weight }: Response, kept: number): number[] {
  return sum.map((log, at) => log + weight * kept * Math.log(plainChance(model, score, GRID[at] as number)));
}

function left(given: number, now: number): number {
  return 2 ** (-(now - given) / (HALF_LIFE * DAY));
}

function plainChanceOf(logs: readonly number[]): number {
  return chanceAtOrAbove(Float64Array.from(plainPosterior(logs)), CUT);
}

function plainBest(pool: readonly Task[], posteriors: ReadonlyMap<string, Posterior>): number[] {
  const worths = pool.map((topics) =>
    topics
      .map(({ topic, model }) =>
        [...(posteriors.get(topic) ?? [])]
          .map((share, at) => share * plainInformation(model, GRID[at] as number))
          .reduce((sum, told) => sum + told, 0),
      )
      .reduce((sum, told) => sum + told, 0),
  );
  return worths.sort((a, b) => b - a).slice(0, 5);
}

type Task = readonly { topic: string; model: TaskModel }[];

function drawTask(random: RandomStream, isCase: boolean): Task {
  const model = drawModel(random, isCase);
  const first = Math.floor(random.between(0, TOPICS.length));
  return Array.from({ length: isCase ? 3 : 1 }, (_, at) => ({
    topic: TOPICS[(first + at) % TOPICS.length] ?? '',
    model,
  }));
}

function drawModel(random: RandomStream, isCase: boolean): TaskModel {
  const difficulty = Math.round(100 * random.between(-2, 2)) / 100;
  if (!isCase) return { kind: 'choice', difficulty, floor: random.pick([0, 0.25]), spread: 0.5 };
  return { kind: 'steps', steps: [-1.5, -0.5, 0.5, 1.5].map((apart) => difficulty + apart), spread: 0.5 };
}

function drawResponse(random: RandomStream): Response {
  const model = drawModel(random, random.next() < 0.5);
  const score = Math.floor(random.between(0, model.kind === 'choice' ? 2 : 5));
  return { at: Math.floor(random.between(0, NOW)), model, score, weight: random.pick([1, 1, 1, 0.5, 0.25]) };
}
