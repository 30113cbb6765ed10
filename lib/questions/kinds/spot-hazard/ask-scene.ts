import type { RandomStream } from '../../../random';
import { fromSi } from '../../../units';
import type { DrawnBody } from '../../kind';
import type { Line } from '../../line';
import { type Choice, shuffled, shuffledOptions } from '../../shared/shuffled-options';
import { type Bench, pressureAt, said } from './bench';
import type { Fact } from './fact';
import { numbersOf } from './facts-of';

/** What is asked: the one thing that stops the work, everything that does, or what to do first. */
export const asks = ['stop', 'all', 'first'] as const;
export type Ask = (typeof asks)[number];

/** How many dangerous and harmless things are seen. */
export const SEEN = { stop: [1, 3], all: [2, 3], first: [1, 3] } as const satisfies Record<Ask, [number, number]>;

/** What people do instead of stopping. */
const EXCUSES = ['go-on', 'gloves', 'watch', 'note'] as const;
const SECONDS = { stop: 35, all: 50, first: 45 } as const;

/** The question about what is seen in the bay. */
export function askScene(
  bench: Bench,
  ask: Ask,
  facts: readonly Fact[],
  stream: (name: string) => RandomStream,
): Omit<DrawnBody, 'topics'> {
  const seen = shuffled(stream('seen'), facts);
  const [danger] = seen.filter(({ hazard }) => hazard);
  const choices = ask === 'first' && danger ? actionsFor(danger, stream('excuses')) : seen.map(choiceOf);
  const { options, right, because } = shuffledOptions(stream('options'), choices);
  const form = ask === 'all' ? 'several' : 'choice';
  return {
    stem: [sceneOf(bench), { say: `ask-${ask}` }],
    figure: {
      figure: 'scene',
      rig: bench.day.rig.id,
      at: { id: 'a', what: 'port', of: bench.port },
      facts: [...shownOn(bench), ...(ask === 'first' ? seen.map(wordsOf) : [])],
    },
    answer: { form, options },
    key: { form, right, because },
    explanation: explain(seen),
    features: {
      several: Number(ask === 'all'),
      first: Number(ask === 'first'),
      numbers: Number(danger?.computed ?? false),
    },
    guessFloor: ask === 'all' ? Math.round(100 / (2 ** options.length - 1)) / 100 : 1 / options.length,
    steps: ask === 'all' ? 2 : 1,
    seconds: SECONDS[ask],
    cautionsAfter: [...new Set(seen.flatMap(({ cautions }) => cautions))],
  };
}

function choiceOf(fact: Fact): Choice {
  return { line: wordsOf(fact), ...(fact.hazard ? {} : { because: whyOf(fact) }) };
}

function actionsFor({ id, with: values }: Fact, stream: RandomStream): Choice[] {
  const excuses = shuffled(stream, EXCUSES).slice(0, 2);
  return [
    { line: { say: `first-${id}`, with: values } },
    { line: { say: `botch-${id}`, with: values }, because: { say: `against-${id}`, with: values } },
    ...excuses.map((excuse) => ({ line: { say: `excuse-${excuse}` }, because: { say: `against-${excuse}` } })),
  ];
}

function wordsOf({ id, hazard, with: values }: Fact): Line {
  return { say: `${hazard ? 'hazard' : 'safe'}-${id}`, with: values };
}

function whyOf({ id, hazard, with: values }: Fact): Line {
  return { say: `why-${hazard ? 'hazard' : 'safe'}-${id}`, with: values };
}

function explain(seen: readonly Fact[]): Line[] {
  const dangers = seen.filter(({ hazard }) => hazard);
  return [
    ...dangers.map(whyOf),
    ...dangers.map(({ id, with: values }) => ({
      say: 'so',
      with: { first: { line: { say: `first-${id}`, with: values } } },
    })),
    ...seen.filter(({ hazard }) => !hazard).map(whyOf),
    { say: 'sources' },
  ];
}

function sceneOf({ day: { rig, setting, fuel }, job, condition, port }: Bench): Line {
  return {
    say: `scene-${job}`,
    with: {
      rig: { name: 'rig', id: rig.id },
      // Words are chosen by codes without hyphens.
      condition: condition === 'full-load' ? 'full' : condition === 'idle' ? 'idle' : 'high',
      port,
      place: { name: 'port', id: port, of: rig.id },
      air: { quantity: Math.round(fromSi(setting.airTemperature, '°C')), unit: '°C', decimals: 0 },
      fuel: { name: 'fuel', id: fuel.id },
    },
  };
}

/** What instruments and thermometers say of the bay. */
function shownOn(bench: Bench): Line[] {
  const { day, job, node, condition } = bench;
  const numbers = numbersOf(bench);
  if (job === 'open')
    return [
      { say: 'shown-rail', with: numbers },
      { say: 'shown-off', with: numbers },
    ];
  const now = { ...numbers, now: said(pressureAt(day, node, condition)) };
  if (job === 'prime')
    return [
      { say: 'shown-port', with: now },
      { say: 'shown-later', with: { ...now, later: said(pressureAt(day, node, 'idle')) } },
    ];
  return [
    { say: 'shown-port', with: now },
    { say: 'shown-rail', with: now },
    { say: 'shown-return', with: now },
  ];
}
