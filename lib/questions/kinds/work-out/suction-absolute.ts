import { z } from 'zod';
import { ambientPressure } from '../../../fluids/atmosphere';
import { fromSi } from '../../../units';
import type { Figure } from '../../figure';
import type { Draw } from '../../kind';
import { drawDay } from '../../shared/rig-day';
import { brokenPoint, holds, overAmbient, severitySchema, upperLimits } from './broken-point';
import { defineExercise } from './exercise';
import { amount, bare, only, rounded, type Sum, say, slip, sumsBody, toStep } from './sum';
import { headsOf, type PrintedTable, readTable } from './table';

const topics = ['suction-tank-and-air'];

const ranges = z.strictObject({
  severity: severitySchema,
  /** Steps between two rows of the table, and how many of them there are to choose from. */
  tableStepM: z.number().positive(),
  rows: z.int().min(3),
  /** Heights at which it may stand, none of them a row of the table. */
  altitudesM: z.array(z.number().positive()).min(1),
  units: z.array(z.enum(['kPa', 'inHg'])).min(1),
  leastKpa: z.number().positive(),
  toleranceKpa: z.number().positive(),
});

type Ranges = z.infer<typeof ranges>;

type Given = NonNullable<ReturnType<typeof measure>>;

/** As a chart prints it. */
const KPA_PER_INHG = 3.386;
const PORT = 'gear-pump-inlet';

export const suctionAbsolute = defineExercise({
  id: 'suctionAbsolute',
  topics,
  fits: ({ nodes }) => nodes.some(({ id }) => id === PORT),
  ranges,
  draw(draw) {
    const given = measure(draw);
    if (!given || given.vacuumKpa < draw.ranges.leastKpa) return undefined;
    const values = worded(given, draw.rig.id);
    return sumsBody({
      stem: [
        say('suctionAbsolute-stem', only(values, 'rig', 'altitude', 'condition', 'vacuum', 'unit', 'factor')),
        say('suctionAbsolute-table'),
      ],
      figure: tableFigure(given.table),
      sums: [ambientSum(given, draw.ranges.toleranceKpa), absoluteSum(given, draw.ranges.toleranceKpa)],
      explanation: [
        say('suctionAbsolute-read', values),
        ...(given.unit === 'kPa' ? [] : [say('suctionAbsolute-convert', values)]),
        say('suctionAbsolute-subtract', values),
      ],
      topics,
      features: { conversion: Number(given.unit !== 'kPa'), table: 1 },
      seconds: 120,
    });
  },
});

function measure({ rig, ranges, catalogue, stream }: Draw<Ranges>) {
  const day = drawDay(stream('day'), rig, catalogue);
  const { condition } = stream('condition').pick(upperLimits(rig, 'suction-restriction'));
  const altitude = stream('altitude').pick(ranges.altitudesM);
  const fault = { cause: 'supply-filter-plugged', severity: stream('severity').between(...ranges.severity) };
  const point = brokenPoint({ ...day, setting: { ...day.setting, altitude } }, fault, condition, catalogue);
  if (!holds(point)) return undefined;
  const unit = stream('unit').pick(ranges.units);
  const vacuum = toStep(fromSi(-overAmbient(point, PORT), unit), unit === 'kPa' ? 1 : 0.5);
  const table: PrintedTable = {
    from: 0,
    step: ranges.tableStepM,
    values: Array.from({ length: ranges.rows }, (_, row) => kpaAt(row * ranges.tableStepM)),
  };
  const ambient = rounded(readTable(table, altitude), 1);
  const vacuumKpa = unit === 'kPa' ? vacuum : rounded(vacuum * KPA_PER_INHG, 1);
  return { condition, altitude, unit, vacuum, vacuumKpa, table, ambient };
}

function kpaAt(altitude: number): number {
  return rounded(fromSi(ambientPressure(altitude), 'kPa'), 1);
}

function tableFigure(table: PrintedTable): Figure {
  return {
    figure: 'table',
    head: [say('head-altitude'), say('head-air-pressure')],
    rows: headsOf(table).map((altitude, row) => [
      say('cell', { value: bare(altitude, 0) }),
      say('cell', { value: bare(table.values[row] ?? Number.NaN, 1) }),
    ]),
  };
}

function worded({ condition, altitude, unit, vacuum, vacuumKpa, table, ambient }: Given, rig: string) {
  const below = Math.floor(altitude / table.step);
  return {
    rig: { name: 'rig', id: rig },
    condition: { name: 'condition', id: condition },
    altitude: bare(altitude, 0),
    unit,
    vacuum: amount(vacuum, unit, unit === 'kPa' ? 0 : 1),
    factor: bare(KPA_PER_INHG, 3),
    vacuumKpa: amount(vacuumKpa, 'kPa', unit === 'kPa' ? 0 : 1),
    lowerHeight: bare(below * table.step, 0),
    upperHeight: bare((below + 1) * table.step, 0),
    lower: amount(table.values[below] ?? Number.NaN, 'kPa', 1),
    upper: amount(table.values[below + 1] ?? Number.NaN, 'kPa', 1),
    ambient: amount(ambient, 'kPa', 1),
    absolute: amount(ambient - vacuumKpa, 'kPa', 1),
  } as const;
}

function ambientSum({ altitude, table, ambient }: Given, tolerance: number): Sum {
  const below = Math.floor(altitude / table.step);
  const [sea, lower, upper] = [table.values[0], table.values[below], table.values[below + 1]];
  return {
    id: 'ambient',
    line: say('suctionAbsolute-ambient'),
    units: ['kPa', 'inHg'],
    value: ambient,
    tolerance,
    slips: [
      slip('sea-level', sea ?? Number.NaN),
      // From sea level up the first row would be the slip above once more.
      ...(below === 0 ? [] : [slip('row-above', lower ?? Number.NaN)]),
      slip('row-below', upper ?? Number.NaN),
    ],
  };
}

function absoluteSum({ unit, vacuum, vacuumKpa, table, ambient }: Given, tolerance: number): Sum {
  const misread = unit === 'kPa' ? [] : [slip('inhg-as-kpa', ambient - vacuum)];
  return {
    id: 'absolute',
    line: say('suctionAbsolute-absolute'),
    units: ['kPa', 'inHg'],
    value: ambient - vacuumKpa,
    tolerance: 1.5 * tolerance,
    slips: [
      slip('gauge-for-absolute', vacuumKpa),
      slip('sea-level', (table.values[0] ?? Number.NaN) - vacuumKpa),
      slip('added-vacuum', ambient + vacuumKpa),
      ...misread,
    ],
    follows: { part: 'ambient', value: (earlier) => earlier - vacuumKpa },
  };
}
