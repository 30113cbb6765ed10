import type { Catalogue } from '../../catalogue';
import type { Check } from '../../checks/check';
import type { RandomStream } from '../../random';
import { type Draw, type DrawnBody, defineKind } from '../kind';
import { dayOf } from '../shared/rig-day';
import { type Choice, shuffledOptions } from '../shared/shuffled-options';
import { topicsOfCheck } from '../shared/topics-of-check';
import { type Drawn, drawHooks, isDangerous } from './which-tool/draw-hooks';
import { fitWords, flawWords, hookWords } from './which-tool/lines';
import { openingChoices, openingsOn, portName } from './which-tool/opening';
import { type WhichToolRanges, whichToolRanges } from './which-tool/ranges';

const INSTRUMENTS = 'instruments-and-uncertainty';
const SAFETY = 'safe-working-and-isolation';
const TOPICS = [
  INSTRUMENTS,
  SAFETY,
  'suction-tank-and-air',
  'priming-and-lift-pump',
  'low-pressure-supply-and-regulation',
  'filtration',
  'high-pressure-and-leakage',
  'returns-and-temperature',
  'electrical-supply-sensors-and-codes',
];

/** An instrument, its port and the condition that a check is done in, chosen so that it is safe and tells something. */
export const whichTool = defineKind({
  id: 'which-tool',
  asksWhatIsSafe: true,
  ranges: whichToolRanges,
  topics: TOPICS,
  make(draw) {
    const { topic, rig, catalogue, stream, ranges } = draw;
    const openings = topic === INSTRUMENTS ? [] : openingsOn(rig, catalogue, topic);
    if (openings.length > 0 && stream('opening').next() < ranges.openings)
      return opening(draw, stream('check').pick(openings));
    const general = topic === INSTRUMENTS || topic === SAFETY;
    return hookUp(draw, drawHooks(draw, general ? undefined : topic, topic === SAFETY));
  },
});

function hookUp({ rig, catalogue, stream }: Draw<WhichToolRanges>, { task, right, wrong }: Drawn): DrawnBody {
  const { check, quantity } = task;
  const choices: Choice[] = [
    { line: hookWords(right, rig.id) },
    ...wrong.map((hook) => ({ line: hookWords(hook, rig.id), because: flawWords(hook, task, rig.id) })),
  ];
  const dangers = wrong.filter(({ flaw }) => isDangerous(flaw)).length;
  const limits = rig.limits.filter((line) => line.check === check.id && line.quantity === quantity.id);
  return {
    ...chosen(stream('shuffle'), choices),
    stem: [{ say: 'stem', with: { check: { name: 'check', id: check.id } } }, { say: 'ask' }],
    figure: { figure: 'limits', rig: rig.id, limits: limits.map(({ id }) => id) },
    explanation: fitWords(right, right.fit, rig.id),
    topics: topicsFor(check, { dangerous: dangers > 0, instruments: true }, catalogue),
    features: {
      dangers,
      coarse: Number(wrong.some(({ flaw }) => flaw.flaw === 'coarse')),
      notTheFirst: Number(right.instrument.id !== check.instruments[0]),
      opening: 0,
    },
    cautionsAfter: check.cautions,
  };
}

/** A fitting that is loosened: all that can be chosen is how the engine is run meanwhile. */
function opening({ rig, catalogue, stream, ranges }: Draw<WhichToolRanges>, check: Check): DrawnBody {
  const day = dayOf(Math.floor(stream('day').between(0, ranges.days)), rig, catalogue);
  const port = check.ports[rig.id]?.[0] ?? '';
  return {
    ...chosen(stream('shuffle'), openingChoices(day, check, stream('wrong'))),
    stem: [
      { say: 'stemOpening', with: { check: { name: 'check', id: check.id }, port: portName(check, rig.id) } },
      { say: 'askOpening' },
    ],
    figure: {
      figure: 'drawing',
      rig: rig.id,
      marked: [{ id: 'fitting', what: 'port', of: port }],
      names: false,
      ports: true,
    },
    explanation: [{ say: 'openAtRest' }, { say: 'openElsewise' }],
    topics: topicsFor(check, { dangerous: true, instruments: false }, catalogue),
    features: { dangers: 3, coarse: 0, notTheFirst: 0, opening: 1 },
    cautionsAfter: check.cautions,
  };
}

function chosen(stream: RandomStream, choices: readonly Choice[]) {
  const { options, right, because } = shuffledOptions(stream, choices);
  return {
    answer: { form: 'choice' as const, options },
    key: { form: 'choice' as const, right, because },
    guessFloor: Number((1 / options.length).toFixed(3)),
    steps: 1,
    seconds: 60,
  };
}

/** Safety where one of the choices would hurt somebody or break something. */
function topicsFor(
  { id }: Check,
  { dangerous, instruments }: Record<'dangerous' | 'instruments', boolean>,
  catalogue: Catalogue,
) {
  const ofCheck = topicsOfCheck(id, catalogue);
  return TOPICS.filter((topic) => {
    if (topic === INSTRUMENTS) return instruments;
    return topic === SAFETY ? dangerous : ofCheck.includes(topic);
  });
}
