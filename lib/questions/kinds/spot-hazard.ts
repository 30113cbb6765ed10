import { z } from 'zod';
import type { RandomStream } from '../../random';
import { defineKind } from '../kind';
import { drawAgain } from '../shared/draw-again';
import { shuffled } from '../shared/shuffled-options';
import { type Ask, askScene, asks, SEEN } from './spot-hazard/ask-scene';
import type { Bench } from './spot-hazard/bench';
import type { Fact } from './spot-hazard/fact';
import { type FactRanges, factsOf, pairSchema } from './spot-hazard/facts-of';
import { drawBench } from './spot-hazard/set-up';

/** The topic that every hazard belongs to. */
const ALWAYS = 'safe-working-and-isolation';

const share = z.number().positive();

const rangesSchema = z.strictObject({
  /** How often each, relative to the others. */
  jobs: z.strictObject({ run: share, prime: share, open: share }),
  asks: z.strictObject({ stop: share, all: share, first: share }),
  pairs: z.array(pairSchema).min(4),
  computedShare: z.number().min(0).max(1),
  scaldingC: z.number().positive(),
  tooSoonSeconds: z.array(z.int().positive()).min(1),
  lateMinutes: z.int().positive(),
});

/** Spot what must stop the work in a bay where all the rest is in order. */
export const spotHazard = defineKind({
  id: 'spot-hazard',
  asksWhatIsSafe: true,
  ranges: rangesSchema,
  topics: [
    ALWAYS,
    'high-pressure-and-leakage',
    'returns-and-temperature',
    'electrical-supply-sensors-and-codes',
    'instruments-and-uncertainty',
  ],
  make({ rig, topic, ranges, catalogue, stream }) {
    const ask = stream('ask').pick(asks, (one) => ranges.asks[one]);
    return drawAgain(stream, (named) => {
      const bench = drawBench({ rig, ranges, catalogue }, named);
      const facts = bench && drawFacts(bench, ask, topic, ranges, named);
      if (!facts) return undefined;
      const topics = facts.flatMap((fact) => (fact.hazard ? fact.topics : []));
      return { ...askScene(bench, ask, facts, named), topics: [...new Set([ALWAYS, ...topics])] };
    });
  },
});

/** As many dangerous and harmless things as the question needs, no two of them about the same. */
function drawFacts(
  bench: Bench,
  ask: Ask,
  topic: string | undefined,
  ranges: FactRanges,
  stream: (name: string) => RandomStream,
): Fact[] | undefined {
  const [wrong, right] = SEEN[ask];
  const onTopic = (fact: Fact) => topic === undefined || topic === ALWAYS || fact.topics.includes(topic);
  const dangers = shuffled(stream('dangers'), factsOf(bench, true, ranges, stream('gauge')));
  const computed = stream('computed').next() < ranges.computedShare;
  // A rail that is still full is a danger whatever else there is to see; one that is neither full nor empty is in dispute.
  const must = dangers.find(({ id }) => id === 'nut');
  const safe = factsOf(bench, false, ranges, stream('gauge'));
  if (bench.job === 'open' && !must && !safe.some(({ id }) => id === 'nut')) return undefined;
  const wanted = must ? [must] : dangers;
  const first = wanted.find((fact) => onTopic(fact) && fact.computed === computed) ?? wanted.find(onTopic);
  if (!first) return undefined;
  const chosen = apart([first, ...dangers], []).slice(0, wrong);
  // What the work itself is about comes first, so that its being there tells nothing.
  const atWork = safe.filter((fact) => fact.computed);
  const beside = safe.filter((fact) => !fact.computed);
  const harmless = apart([...atWork, ...shuffled(stream('safe'), beside)], chosen).slice(0, right);
  return chosen.length === wrong && harmless.length === right ? [...chosen, ...harmless] : undefined;
}

/** The first of each group that is not taken. */
function apart(facts: readonly Fact[], taken: readonly Fact[]): Fact[] {
  const groups = new Set(taken.map(({ group }) => group));
  return facts.filter(({ group }) => !groups.has(group) && groups.add(group));
}
