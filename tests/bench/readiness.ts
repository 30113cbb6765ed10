import { GRID } from '@/lib/competency/grid';
import { type Tally, tallyOf } from '@/lib/competency/tally';
import type { TaskModel } from '@/lib/competency/task-model';
import { randomStream } from '@/lib/random';
import { boardOf, type OnBoard } from '@/lib/readiness/board';
import { evidenceOn } from '@/lib/readiness/person-evidence';
import type { RoleProfile } from '@/lib/readiness/profile';
import { standingOf } from '@/lib/readiness/standing';
import { plainPosterior } from '../support/plain-competency';
import type { Pair } from './competency';
import { rounds, type Spread, spreadOf } from './spread';

const PEOPLE = 500;
const TOPICS = Array.from({ length: 13 }, (_, at) => `topic ${at}`);
const HALF_LIFE = 180;
const DAY = 86_400_000;
const NOW = 1000 * DAY;

export interface ReadinessFigures {
  /** Milliseconds: decision, chance, ability and interval of 500 people on 13 topics, from their tallies. */
  decisions: Pair;
  /** Milliseconds: the same as a board, with the day on which each decision fades within 90. */
  board: Spread;
}

export function measureReadiness(): ReadinessFigures {
  const people = Array.from({ length: PEOPLE }, (_, at) => drawPerson(at));
  const ours = () => people.flatMap((person) => decided(person));
  const plain = () => people.flatMap((person) => plainDecided(person));
  if (ours().join() !== plain().join()) throw new Error('The board and its formulas decide differently');
  return {
    decisions: { ours: spreadOf(rounds(9, ours)), plain: spreadOf(rounds(3, plain)) },
    board: spreadOf(rounds(9, () => boardOf(people, profile, HALF_LIFE, NOW))),
  };
}

const profile: RoleProfile = {
  id: 'all-of-it',
  version: 1,
  topics: TOPICS.map((topic) => ({ topic, cut: 0.25, confidence: 0.9 })),
  refuse: 0.1,
  minimum: 5,
  maximum: 20,
  safety: { clean: 5, atLeast: 0 },
  recentDays: 365,
  validMonths: 12,
  minutes: 60,
  handsOn: null,
  text: { en: { name: 'All of it', about: 'For the figures' } },
  source: { kind: 'assumed', because: 'for the figures' },
};

/** Somebody with 0 to 30 responses on each topic. */
function drawPerson(at: number): OnBoard {
  const random = randomStream(`person ${at}`, 'bench');
  const ability = 3 * random.next() - 1;
  const tallies = new Map(
    TOPICS.map((topic) => {
      const responses = Array.from({ length: Math.floor(31 * random.next()) }, () => {
        const difficulty = Math.round(8 * random.next() - 4) / 2;
        const model: TaskModel = { kind: 'choice', difficulty, floor: 0.25, spread: 0.5 };
        const score = random.next() < 0.25 + 0.75 / (1 + Math.exp(difficulty - ability)) ? 1 : 0;
        return { at: NOW - Math.floor(300 * random.next()) * DAY, model, score, weight: 1 };
      });
      return [topic, tallyOf(responses, HALF_LIFE)] as const;
    }),
  );
  const evidence = { tallies, cases: new Map(), safety: [] };
  return { id: `${at}`, name: `${at}`, classes: [], evidence, signOffEndsAt: null };
}

function decided({ evidence }: OnBoard): string[] {
  const topics = evidenceOn(evidence, profile.topics, HALF_LIFE, NOW);
  return standingOf({ profile, topics, safety: [], at: NOW }).topics.map(({ decision }) => decision);
}

function plainDecided({ evidence }: OnBoard): string[] {
  return profile.topics.map(({ topic, cut, confidence }) => {
    const { count, sum, at } = evidence.tallies.get(topic) as Tally;
    const kept = count === 0 ? 0 : 2 ** (-(NOW - at) / (HALF_LIFE * DAY));
    const shares = plainPosterior([...sum].map((log) => kept * log));
    const chance = shares.reduce((total, share, place) => total + share * above(place, cut), 0);
    plainInterval(shares);
    if (count < profile.minimum || NOW - at > profile.recentDays * DAY) return 'not-enough-evidence';
    return chance >= confidence ? 'ready' : chance <= profile.refuse ? 'not-yet' : 'not-enough-evidence';
  });
}

function above(place: number, cut: number): number {
  const theta = GRID[place] as number;
  if (Math.abs(theta - cut) < 1e-9) return 0.5;
  return theta > cut ? 1 : 0;
}

/** Mean, and where a twentieth lies below and above. */
function plainInterval(shares: readonly number[]): readonly [number, number, number] {
  let sum = 0;
  const below = shares.map((share) => {
    sum += share;
    return sum;
  });
  const at = (part: number) => GRID[below.findIndex((share) => share >= part)] as number;
  return [shares.reduce((total, share, place) => total + share * (GRID[place] as number), 0), at(0.05), at(0.95)];
}
