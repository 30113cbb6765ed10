import { z } from 'zod';
import { gaugeFor, showQuantity } from '../../cases/perform-check';
import type { Catalogue } from '../../catalogue';
import { measured } from '../../checks/expected';
import { type Belief, beliefAtStart, entropy, updateBelief } from '../../diagnosis/belief';
import { type CheckWorth, hookUpKey, nextChecks } from '../../diagnosis/next-check';
import { byRepair } from '../../diagnosis/shares';
import type { RandomStream } from '../../random';
import type { ShownReading } from '../figure';
import { type DrawnBody, defineKind } from '../kind';
import type { Line } from '../line';
import type { Fault } from '../shared/broken-day';
import { type DayCase, dayCase } from '../shared/day-case';
import { dayWords } from '../shared/day-words';
import { drawAgain } from '../shared/draw-again';
import { drawFault } from '../shared/draw-fault';
import { judgedReading } from '../shared/judged-reading';
import { orderWords } from '../shared/order-words';
import { dayOf, type RigDay } from '../shared/rig-day';
import { shuffledOptions } from '../shared/shuffled-options';
import { topicsOfCheck } from '../shared/topics-of-check';

const REASONING = 'reasoning-and-repair-proof';
const TOPICS = [
  REASONING,
  'suction-tank-and-air',
  'priming-and-lift-pump',
  'low-pressure-supply-and-regulation',
  'filtration',
  'metering-and-rail-control',
  'high-pressure-and-leakage',
  'returns-and-temperature',
  'electrical-supply-sensors-and-codes',
];

const share = z.number().min(0).max(1);
const ranges = z.strictObject({
  days: z.int().positive(),
  severities: z.array(share).min(1),
  /** Most readings that are known before. */
  readings: z.int().nonnegative(),
  options: z.int().min(3).max(6),
  /** Of the best check's worth: from here on a check is right as well, and up to there plainly worse. */
  rightFrom: share,
  worseTo: share,
  /** The best check tells at least so much of what is open. */
  leastTold: share,
});

type Ranges = z.infer<typeof ranges>;

/** A fault after some readings: what is known, and what each check would tell. */
interface Standing {
  found: DayCase;
  readings: readonly ShownReading[];
  /** Nats of the repair decision that are open. */
  open: number;
  /** Best first. */
  worth: readonly CheckWorth[];
}

/** Which of four checks tells most per minute about what to repair. */
export const nextCheck = defineKind({
  id: 'next-check',
  ranges,
  topics: TOPICS,
  make({ rig, topic, ranges: within, catalogue, stream }) {
    return drawAgain(stream, (tried) => {
      const day = dayOf(Math.floor(tried('day').next() * within.days), rig, catalogue);
      const fault = drawFault(tried, day, within.severities, catalogue);
      const count = Math.floor(tried('readings').next() * (within.readings + 1));
      const standing = fault && standingOf(day, fault, count, catalogue);
      const chosen = standing && chooseChecks(tried('checks'), standing, within);
      if (!standing || !chosen) return undefined;
      const on = topicsOn(chosen, catalogue);
      if (topic !== undefined && !on.includes(topic)) return undefined;
      return bodyOf(day, standing, chosen, on, tried('shuffle'), within);
    });
  },
});

const standings = new WeakMap<RigDay, Map<string, Standing | undefined>>();

/** Kept, since what the checks are worth takes milliseconds. Instruments have the same errors on the same day. */
function standingOf(day: RigDay, fault: Fault, count: number, catalogue: Catalogue): Standing | undefined {
  const known = standings.get(day) ?? new Map<string, Standing | undefined>();
  standings.set(day, known);
  const key = `${fault.cause.id} ${fault.severity} ${count}`;
  if (!known.has(key)) known.set(key, computed(day, fault, count, catalogue));
  return known.get(key);
}

function computed(day: RigDay, fault: Fault, count: number, catalogue: Catalogue): Standing | undefined {
  if (count === 0) {
    const start = atStart(day, fault, catalogue);
    return start && withWorth(start, new Set());
  }
  const before = standingOf(day, fault, count - 1, catalogue);
  const [best] = before?.worth ?? [];
  const read = before && best && lookAt(before, best, catalogue);
  return read && withWorth(read, read.done);
}

interface Known extends Omit<Standing, 'worth' | 'open'> {
  belief: Belief;
}

const beliefs = new WeakMap<Standing, { belief: Belief; done: Set<string> }>();

function atStart(day: RigDay, fault: Fault, catalogue: Catalogue): Known | undefined {
  const found = dayCase(day, fault, 'next check', catalogue);
  return found && { found, readings: [], belief: beliefAtStart(found.particles) };
}

/** What is known after the check that was best has been made. */
function lookAt(before: Standing, { check, condition, instrument }: CheckWorth, catalogue: Catalogue) {
  const at = beliefs.get(before);
  const [procedure, gauge] = [catalogue.checks.get(check), catalogue.gauges.get(instrument)];
  const quantity = before.found.particles.candidates.find(
    (one) => one.check.id === check && one.condition === condition,
  )?.quantities[0];
  if (!at || !procedure || !gauge || !quantity) return undefined;
  const shown = showQuantity(before.found, condition, gauge, quantity);
  const seen = shown.kind === 'value' ? measured(shown, gaugeFor(gauge, quantity)) : undefined;
  if (!seen) return undefined;
  return {
    found: before.found,
    readings: [...before.readings, judgedReading(before.found.rig, { check, condition, instrument, shown }, seen)],
    belief: updateBelief(at.belief, before.found.particles, { check, condition, quantity, seen }),
    done: new Set([...at.done, hookUpKey(check, condition)]),
  };
}

function withWorth({ found, readings, belief }: Known, done: Set<string>): Standing {
  const open = entropy(byRepair(found.particles, belief).values());
  const standing = { found, readings, open, worth: nextChecks(found.particles, belief, done) };
  beliefs.set(standing, { belief, done });
  return standing;
}

interface Chosen {
  right: CheckWorth[];
  wrong: CheckWorth[];
}

/** Of the draws in which another check is as good, so many offer it too. */
const SEVERAL_RIGHT = 0.3;

/** The best, now and then with one that is as good, and others that are plainly worse, each of another check. */
function chooseChecks(stream: RandomStream, { worth, open }: Standing, within: Ranges): Chosen | undefined {
  const [best] = worth;
  if (!best || open <= 0 || best.gain < within.leastTold * open) return undefined;
  const good = worth.filter((one) => one.perMinute >= within.rightFrom * best.perMinute);
  const asGood = good.filter(({ check }) => check !== best.check);
  const right = asGood.length > 0 && stream.next() < SEVERAL_RIGHT ? [best, stream.pick(asGood)] : [best];
  const worse = worth.filter((one) => one.perMinute <= within.worseTo * best.perMinute);
  const wrong: CheckWorth[] = [];
  while (right.length + wrong.length < within.options) {
    const left = worse.filter((one) => [...right, ...wrong].every(({ check }) => check !== one.check));
    if (left.length === 0) return undefined;
    wrong.push(stream.pick(left));
  }
  return { right, wrong };
}

function topicsOn({ right, wrong }: Chosen, catalogue: Catalogue): string[] {
  const offered = [...right, ...wrong].flatMap(({ check }) => topicsOfCheck(check, catalogue));
  return TOPICS.filter((id) => id === REASONING || offered.includes(id));
}

function bodyOf(
  day: RigDay,
  { found, readings, open }: Standing,
  { right, wrong }: Chosen,
  on: string[],
  stream: RandomStream,
  within: Ranges,
): DrawnBody {
  const [best] = right;
  const choices = [
    ...right.map((one) => ({ line: checkLine(one) })),
    ...wrong.map((one) => ({ line: checkLine(one), because: worthLine('because', one, open) })),
  ];
  const { options, right: key, because } = shuffledOptions(stream, choices);
  const ranked = [...right, ...wrong].sort((a, b) => b.perMinute - a.perMinute);
  return {
    stem: [dayWords(day), ...orderWords(found), { say: readings.length > 0 ? 'askAfter' : 'askFirst' }],
    ...(readings.length > 0 && { figure: { figure: 'readings', readings } }),
    answer: { form: 'choice', options },
    key: { form: 'choice', right: key, because },
    explanation: [
      ...ranked.map((one) => worthLine('worth', one, open)),
      { say: 'rule', with: { right: Math.round(100 * (1 - within.rightFrom)) } },
    ],
    topics: on,
    features: {
      readings: readings.length,
      near: wrong.reduce((most, { perMinute }) => Math.max(most, perMinute), 0) / (best?.perMinute ?? 1) > 0.5 ? 1 : 0,
    },
    guessFloor: right.length / options.length,
    steps: 1,
    seconds: 100,
  };
}

function checkLine({ check, condition, instrument, minutes }: CheckWorth): Line {
  return {
    say: 'check',
    with: {
      check: { name: 'check', id: check },
      condition: { name: 'condition', id: condition },
      gauge: { name: 'gauge', id: instrument },
      minutes,
    },
  };
}

/** How much of what is open a check is expected to settle, and how much in a minute. */
function worthLine(say: string, { check, condition, minutes, gain, perMinute }: CheckWorth, open: number): Line {
  return {
    say,
    with: {
      check: { name: 'check', id: check },
      condition: { name: 'condition', id: condition },
      minutes,
      share: { number: (100 * gain) / open, decimals: 0 },
      perMinute: { number: (100 * perMinute) / open, decimals: 1 },
    },
  };
}
