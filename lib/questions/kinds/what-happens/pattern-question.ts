import type { Catalogue } from '../../../catalogue';
import type { Cause } from '../../../faults/cause';
import type { RandomStream } from '../../../random';
import { topicsOf } from '../../../topics/topics-of';
import type { DrawnBody } from '../../kind';
import type { Line } from '../../line';
import { causesOn, type Fault, severitiesOf } from '../../shared/broken-day';
import { dayWords, lookWords, shownBy } from '../../shared/day-words';
import type { RigDay } from '../../shared/rig-day';
import { type Choice, shuffled, shuffledOptions } from '../../shared/shuffled-options';
import { changeWords, ruleWords } from './change-words';
import { type Effect, effectsOf, NO_READING } from './changes';
import { drawRows, type Row } from './draw-rows';
import { vacuumWords } from './grid-question';
import type { WhatHappensRanges } from './ranges';

/** Wrong causes beside the right one. */
const OTHERS = 3;

/** A pattern of readings is shown: which cause makes it? */
export function patternQuestion(
  stream: (name: string) => RandomStream,
  day: RigDay,
  fault: Fault,
  { patternRows, severities }: WhatHappensRanges,
  catalogue: Catalogue,
): DrawnBody | undefined {
  const rows = drawRows(stream, day, fault, patternRows, catalogue);
  if (!rows || rows.filter(moves).length < 2) return undefined;
  const others = causesOn(day, catalogue).flatMap((cause): Other[] => {
    if (cause === fault.cause) return [];
    const spread = new Set(severitiesOf(cause, [cause.severity.min, ...severities, cause.severity.max]));
    const effects = [...spread].map((severity) => effectsOf(day, { cause, severity }, catalogue));
    const against = rows.find((row) => contradicts(row, effects));
    return against && rows.some((row) => moves(row) && agrees(row, effects)) ? [{ cause, against }] : [];
  });
  if (others.length < OTHERS) return undefined;
  const chosen = shuffled(stream('others'), others).slice(0, OTHERS);
  return body(stream, day, fault, rows, chosen, catalogue);
}

/** A cause that looks alike, and the reading that it would not give. */
interface Other {
  cause: Cause;
  against: Row;
}

function moves({ change }: Row): boolean {
  return change.direction !== 'stays';
}

/** Whether a cause, however far it has gone, gives another reading than the one shown. */
function contradicts({ index, change }: Row, effects: readonly (readonly Effect[])[]): boolean {
  return effects.every((all) => {
    const effect = all[index];
    if (effect === NO_READING) return true;
    return effect?.direction !== undefined && effect.direction !== change.direction;
  });
}

/** Whether a cause gives the reading shown at one severity at least. */
function agrees({ index, change }: Row, effects: readonly (readonly Effect[])[]): boolean {
  return effects.some((all) => {
    const effect = all[index];
    return effect !== NO_READING && effect?.direction === change.direction;
  });
}

function body(
  stream: (name: string) => RandomStream,
  day: RigDay,
  fault: Fault,
  rows: readonly Row[],
  others: readonly Other[],
  catalogue: Catalogue,
): DrawnBody {
  const choices: Choice[] = [
    { line: causeWords(fault.cause) },
    ...others.map((other) => ({ line: causeWords(other.cause), because: against(day, other, catalogue) })),
  ];
  const { options, right, because } = shuffledOptions(stream('options'), choices);
  return {
    stem: [dayWords(day), { say: 'askCause' }, ...vacuumWords(rows)],
    figure: {
      figure: 'table',
      head: [{ say: 'headReading' }, { say: 'headChange' }],
      rows: rows.map(({ look, change: { direction } }) => [lookWords(look), { say: 'column', with: { direction } }]),
    },
    answer: { form: 'choice', options },
    key: { form: 'choice', right, because },
    explanation: [
      {
        say: 'how',
        with: { cause: { name: 'cause', id: fault.cause.id }, how: { name: 'cause-how', id: fault.cause.id } },
      },
      ...rows.map(({ look, change }) => changeWords(look, change)),
      ...others.map((other) => against(day, other, catalogue)),
      ruleWords(),
    ],
    topics: topicsOf(fault.cause, catalogue).map(({ id }) => id),
    features: {
      rows: rows.length,
      falling: rows.filter(({ change }) => change.direction === 'falls').length,
      mild: 0,
      pattern: 1,
    },
    guessFloor: 1 / (OTHERS + 1),
    steps: 1,
    seconds: 90,
  };
}

function causeWords(cause: Cause): Line {
  return { say: 'causeOption', with: { cause: { name: 'cause', id: cause.id } } };
}

/** What speaks against a cause, at its severest. */
function against(day: RigDay, { cause, against: { look, index, change } }: Other, catalogue: Catalogue): Line {
  const effect = effectsOf(day, { cause, severity: cause.severity.max }, catalogue)[index];
  const named = {
    cause: { name: 'cause' as const, id: cause.id },
    look: { line: lookWords(look) },
    shown: change.direction,
  };
  if (!effect || effect === NO_READING) return { say: 'againstNoReading', with: named };
  return {
    say: 'against',
    with: {
      ...named,
      direction: effect.direction ?? 'stays',
      before: shownBy(effect.gauge, effect.before),
      after: shownBy(effect.gauge, effect.after),
    },
  };
}
