import type { Catalogue } from '../../../catalogue';
import type { RandomStream } from '../../../random';
import { topicsOf } from '../../../topics/topics-of';
import type { DrawnBody } from '../../kind';
import type { Line } from '../../line';
import type { Fault } from '../../shared/broken-day';
import { dayWords, lookWords } from '../../shared/day-words';
import { degreeOf } from '../../shared/degree-of';
import type { RigDay } from '../../shared/rig-day';
import { changeWords, faultValues, ruleWords } from './change-words';
import { directions } from './changes';
import { drawRows, type Row } from './draw-rows';
import type { WhatHappensRanges } from './ranges';

/** A fault is named: which readings rise, fall or stay? */
export function gridQuestion(
  stream: (name: string) => RandomStream,
  day: RigDay,
  fault: Fault,
  { rows: range }: WhatHappensRanges,
  catalogue: Catalogue,
): DrawnBody | undefined {
  const rows = drawRows(stream, day, fault, range, catalogue);
  return rows && body(day, fault, rows, catalogue);
}

function body(day: RigDay, fault: Fault, rows: readonly Row[], catalogue: Catalogue): DrawnBody {
  const named = rows.map((row, index) => ({ id: `row-${index + 1}`, row }));
  return {
    stem: [dayWords(day), { say: 'askGrid', with: faultValues(fault) }, ...vacuumWords(rows)],
    answer: {
      form: 'grid',
      rows: named.map(({ id, row }) => ({ id, line: lookWords(row.look) })),
      columns: directions.map((direction) => ({ id: direction, line: { say: 'column', with: { direction } } })),
    },
    key: { form: 'grid', cells: Object.fromEntries(named.map(({ id, row }) => [id, row.change.direction])) },
    explanation: [
      {
        say: 'how',
        with: { cause: { name: 'cause', id: fault.cause.id }, how: { name: 'cause-how', id: fault.cause.id } },
      },
      ...rows.map(({ look, change }) => changeWords(look, change)),
      ruleWords(),
    ],
    topics: topicsOf(fault.cause, catalogue).map(({ id }) => id),
    features: {
      rows: rows.length,
      falling: rows.filter(({ change }) => change.direction === 'falls').length,
      mild: Number(degreeOf(fault) === 'mild'),
      pattern: 0,
    },
    guessFloor: Number((directions.length ** -rows.length).toFixed(3)),
    steps: rows.length,
    seconds: 25 * rows.length,
  };
}

/** Where a vacuum is among the readings: which way it rises. */
export function vacuumWords(rows: readonly Row[]): Line[] {
  return rows.some(({ look }) => look.quantity.measures === 'vacuum') ? [{ say: 'vacuum' }] : [];
}
