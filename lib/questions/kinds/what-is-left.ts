import { z } from 'zod';
import { type Area, areas } from '../../areas';
import { gaugeFor, showQuantity } from '../../cases/perform-check';
import type { Catalogue } from '../../catalogue';
import { measured } from '../../checks/expected';
import { type Belief, beliefAtStart, updateBelief } from '../../diagnosis/belief';
import type { Candidate } from '../../diagnosis/candidates';
import { byArea } from '../../diagnosis/shares';
import type { RandomStream } from '../../random';
import type { ShownReading } from '../figure';
import { type DrawnBody, defineKind } from '../kind';
import type { Line } from '../line';
import { type DayCase, dayCase } from '../shared/day-case';
import { dayWords, lookWords } from '../shared/day-words';
import { drawAgain, drawIfAny } from '../shared/draw-again';
import { drawFault } from '../shared/draw-fault';
import { type JudgedReading, judgedReading } from '../shared/judged-reading';
import { isNumber } from '../shared/limited';
import { orderWords } from '../shared/order-words';
import { dayOf } from '../shared/rig-day';
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
];

const share = z.number().min(0).max(1);
const ranges = z.strictObject({
  days: z.int().positive(),
  severities: z.array(share).min(1),
  readings: z.int().positive(),
  /** An area counts as suspect from here on, and as cleared up to there; what lies between is not asked. */
  suspectFrom: share,
  clearedTo: share,
  options: z.int().min(3).max(9),
});

type Ranges = z.infer<typeof ranges>;
type Shares = Readonly<Record<Area, number>>;

/** A reading with the belief in each area after it. */
interface Step {
  reading: JudgedReading;
  after: Shares;
}

/** Which areas three readings leave under suspicion, by computed belief. */
export const whatIsLeft = defineKind({
  id: 'what-is-left',
  ranges,
  topics: TOPICS,
  make({ rig, topic, ranges: within, catalogue, stream }) {
    return drawAgain(stream, (tried) => {
      const day = dayOf(Math.floor(tried('day').next() * within.days), rig, catalogue);
      const fault = drawFault(tried, day, within.severities, catalogue);
      const found = fault && dayCase(day, fault, `${tried('instruments').next()}`, catalogue);
      if (!found) return undefined;
      const start = byArea(found.particles, beliefAtStart(found.particles));
      return drawIfAny(
        (name) => tried(`readings ${name}`),
        (again) => {
          const steps = readInTurn(found, again('checks'), within.readings, checksOf(topic, catalogue));
          const chosen = steps && chooseAreas(again('areas'), start, steps, within);
          if (!chosen) return undefined;
          const stem = [dayWords(day), ...orderWords(found)];
          return bodyOf({ stem, start, steps, on: topicsOn(steps, catalogue), ...chosen }, again('shuffle'), within);
        },
        READINGS_TRIED,
      );
    });
  },
});

/** Sets of readings that are tried of one fault, before another is drawn. */
const READINGS_TRIED = 6;

/** Checks of a topic; undefined where any will do. */
function checksOf(topic: string | undefined, { topics }: Catalogue): readonly string[] | undefined {
  return topic === undefined || topic === REASONING ? undefined : topics.get(topic)?.checks;
}

/**
 * Checks in a drawn order, each read once with the procedure's own instrument; undefined where an instrument is lost.
 *
 * @param among  Checks of which the first is one.
 */
function readInTurn(
  found: DayCase,
  stream: RandomStream,
  count: number,
  among: readonly string[] | undefined,
): Step[] | undefined {
  const open = found.particles.candidates.filter(({ quantities: [quantity] }) => quantity && isNumber(quantity));
  const steps: Step[] = [];
  let belief: Belief = beliefAtStart(found.particles);
  while (steps.length < count) {
    const unread = open.filter(({ check }) => {
      if (steps.length === 0 && among) return among.includes(check.id);
      return steps.every(({ reading }) => reading.check !== check.id);
    });
    if (unread.length === 0) return undefined;
    const read = readOne(found, stream.pick(unread), belief);
    if (!read) return undefined;
    belief = read.belief;
    steps.push({ reading: read.reading, after: byArea(found.particles, belief) });
  }
  return steps;
}

function readOne(found: DayCase, { check, condition, quantities, instruments }: Candidate, belief: Belief) {
  const [quantity] = quantities;
  const [instrument] = instruments;
  if (!quantity || !instrument) return undefined;
  const shown = showQuantity(found, condition, instrument, quantity);
  const seen = shown.kind === 'value' ? measured(shown, gaugeFor(instrument, quantity)) : undefined;
  if (!seen) return undefined;
  return {
    reading: judgedReading(found.rig, { check: check.id, condition, instrument: instrument.id, shown }, seen),
    belief: updateBelief(belief, found.particles, { check: check.id, condition, quantity, seen }),
  };
}

function topicsOn(steps: readonly Step[], catalogue: Catalogue): string[] {
  const read = steps.flatMap(({ reading }) => topicsOfCheck(reading.check, catalogue));
  return TOPICS.filter((id) => id === REASONING || read.includes(id));
}

interface Chosen {
  /** In the order of the trade's areas. */
  suspect: Area[];
  cleared: Area[];
}

/** Areas that are beyond dispute; undefined where some are not, or where the readings told nothing. */
function chooseAreas(stream: RandomStream, start: Shares, steps: readonly Step[], within: Ranges): Chosen | undefined {
  const end = steps[steps.length - 1]?.after;
  if (!end) return undefined;
  const suspect = areas.filter((area) => end[area] >= within.suspectFrom);
  const cleared = areas.filter((area) => end[area] <= within.clearedTo);
  if (suspect.length + cleared.length < areas.length || suspect.length === 0) return undefined;
  // What was under suspicion and is no more is what the readings say.
  const told = cleared.filter((area) => start[area] >= within.suspectFrom);
  const room = within.options - suspect.length;
  if (told.length === 0 || room < 2) return undefined;
  const others = cleared.filter((area) => !told.includes(area));
  const offered = [...told];
  while (offered.length < room && others.length > 0) {
    const [drawn] = others.splice(Math.floor(stream.next() * others.length), 1);
    if (drawn) offered.push(drawn);
  }
  return { suspect, cleared: offered.slice(0, Math.max(2, room)) };
}

interface Drawn extends Chosen {
  stem: readonly Line[];
  start: Shares;
  steps: readonly Step[];
  on: string[];
}

function bodyOf({ stem, start, steps, on, suspect, cleared }: Drawn, stream: RandomStream, within: Ranges): DrawnBody {
  const end = steps[steps.length - 1]?.after ?? start;
  const choices = [
    ...suspect.map((area) => ({ line: areaLine(area) })),
    ...cleared.map((area) => ({ line: areaLine(area), because: becauseOf(area, start, steps) })),
  ];
  const { options, right, because } = shuffledOptions(stream, choices);
  return {
    stem: [...stem, { say: 'ask', with: { share: Math.round(100 * within.suspectFrom) } }],
    figure: { figure: 'readings', readings: steps.map(({ reading }) => reading) },
    answer: { form: 'several', options },
    key: { form: 'several', right, because },
    explanation: [
      { say: 'atStart', with: { shares: sharesOf(start, within) } },
      ...steps.map(({ reading, after }) => ({
        say: 'after',
        with: {
          look: { line: lookOf(reading) },
          verdict: { name: 'verdict' as const, id: reading.judged.verdict },
          shares: sharesOf(after, within),
        },
      })),
      { say: 'left', with: { areas: { list: suspect.map((area) => ({ name: 'area' as const, id: area })) } } },
    ],
    topics: on,
    features: {
      suspects: suspect.length,
      options: options.length,
      close: Math.max(...suspect.map((area) => end[area])) < 0.6 ? 1 : 0,
    },
    // One of all the ways to tick at least one box.
    guessFloor: Number((1 / (2 ** options.length - 1)).toPrecision(2)),
    steps: suspect.length,
    seconds: 120,
  };
}

function areaLine(area: Area): Line {
  return { say: 'area', with: { area: { name: 'area', id: area } } };
}

function lookOf({ check, condition, shown }: ShownReading): Line {
  return lookWords({ check: { id: check }, condition, quantity: { id: shown.quantity } });
}

/** Which reading took an area out, or that it was never in. */
function becauseOf(area: Area, start: Shares, steps: readonly Step[]): Line {
  const end = steps[steps.length - 1]?.after ?? start;
  const drops = steps.map(({ after }, index) => (steps[index - 1]?.after ?? start)[area] - after[area]);
  const most = drops.indexOf(Math.max(...drops));
  const step = steps[most];
  const values = { area: { name: 'area' as const, id: area }, before: percent(start[area]), after: percent(end[area]) };
  return step && (drops[most] ?? 0) > 0.02
    ? { say: 'cleared', with: { ...values, look: { line: lookOf(step.reading) } } }
    : { say: 'never', with: values };
}

/** Only those that anybody would speak of. */
function sharesOf(shares: Shares, { clearedTo }: Ranges) {
  const spoken = areas.filter((area) => shares[area] > clearedTo).sort((a, b) => shares[b] - shares[a]);
  return {
    list: spoken.map((area) => ({
      line: { say: 'share', with: { area: { name: 'area' as const, id: area }, share: percent(shares[area]) } },
    })),
  };
}

function percent(value: number): number {
  return Math.round(100 * value);
}
