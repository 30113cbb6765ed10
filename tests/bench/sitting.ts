import { chanceAtOrAbove } from '@/lib/competency/posterior';
import { posteriorAt } from '@/lib/competency/tally';
import { randomStream } from '@/lib/random';
import { nextStep } from '@/lib/readiness/sitting';
import { sittingPool } from '@/lib/readiness/sitting-pool';
import type { SittingRules } from '@/lib/readiness/sitting-rules';
import { afterTask, type SittingState, sittingOf } from '@/lib/readiness/sitting-state';
import { plainInformation } from '../support/plain-competency';
import { madeUpPool } from '../support/sittings';
import type { Pair } from './competency';
import { rounds, spreadOf } from './spread';

const TOPICS = Array.from({ length: 13 }, (_, at) => `topic ${at}`);
const POOL = { topics: TOPICS, cases: 200, questions: 1800 };
const GIVEN = 20;

const rules: SittingRules = {
  topics: TOPICS.map((topic) => ({ topic, cut: 0.5, confidence: 0.95, share: 1, atLeast: 8 })),
  refuse: 0.05,
  maximum: 30,
  cases: 0,
  seconds: 36_000,
};

/** Milliseconds: the next task of a new-hire check on 13 topics, half way through, from a pool of 2,000. */
export function measureNextTask(): Pair {
  const tasks = madeUpPool(POOL, 'bench');
  const pool = sittingPool(tasks, rules);
  let state = sittingOf();
  for (let at = 0; at < GIVEN; at++) {
    const step = nextStep(state, pool, rules, randomStream('bench', `${at}`));
    if ('end' in step) throw new Error('The bench has tasks enough');
    const told = step.task.topics.map(({ topic, model }) => ({ topic, model, score: at % 2 }));
    state = afterTask(state, step.task, told, at * 60);
  }
  const ours = () => worthsOf(nextStep(state, pool, rules, randomStream('bench', 'next')));
  const plain = () => plainBest(tasks, state);
  const [mine, other] = [ours(), plain()];
  for (const [at, worth] of mine.entries())
    if (!(Math.abs(worth - (other[at] ?? Number.NaN)) < 1e-9)) throw new Error(`${worth} and ${other[at]} differ`);
  return { ours: spreadOf(rounds(25, ours)), plain: spreadOf(rounds(10, plain)) };
}

function worthsOf(step: ReturnType<typeof nextStep>): number[] {
  return 'end' in step ? [] : step.choice.contenders.map(({ worth }) => worth);
}

/** The same as one would write it down: every task looked at anew, by the formula, then all of them sorted. */
function plainBest(tasks: ReturnType<typeof madeUpPool>, { tallies, met, given }: SittingState): number[] {
  const count = (topic: string) => tallies.get(topic)?.count ?? 0;
  const open = rules.topics.filter(({ topic, cut, confidence, atLeast }) => {
    const tally = tallies.get(topic);
    const chance = tally ? chanceAtOrAbove(posteriorAt(tally, tally.at, null), cut) : 0.5;
    return count(topic) < atLeast || (chance < confidence && chance > rules.refuse);
  });
  const [lagging] = [...open].sort((one, other) => count(one.topic) - count(other.topic));
  const last = given.slice(-3).map(({ family }) => family);
  return tasks
    .filter(({ exposure, family }) => !met.has(exposure) && !last.includes(family))
    .filter(({ topics }) => topics.some(({ topic }) => topic === lagging?.topic))
    .map(({ topics, seconds }) => {
      const told = topics.map(({ topic, model }) => {
        const asked = open.find((one) => one.topic === topic);
        return asked ? plainInformation(model, asked.cut) : 0;
      });
      return told.reduce((sum, one) => sum + one, 0) / (seconds / 60);
    })
    .sort((one, other) => other - one)
    .slice(0, 5);
}
