import { z } from 'zod';
import { densityAt } from '../../../fluids/density';
import type { Fuel } from '../../../fluids/fuel';
import { toSi, ZERO_CELSIUS } from '../../../units';
import type { Figure } from '../../figure';
import type { Draw } from '../../kind';
import { defineExercise } from './exercise';
import { amount, bare, only, rounded, type Sum, say, slip, sumsBody, toStep } from './sum';
import { headsOf, type PrintedTable, readTable } from './table';

const topics = ['fuel-quality'];

const ranges = z.strictObject({
  volumeL: z.tuple([z.number().positive(), z.number().positive()]),
  volumeStepL: z.number().positive(),
  temperatureC: z.tuple([z.number(), z.number()]),
  /** Closer to 15 °C there would be next to nothing to correct. */
  leastRiseC: z.number().positive(),
  table: z.strictObject({ fromC: z.number(), stepC: z.number().positive(), rows: z.int().min(3) }),
  units: z.array(z.enum(['°C', '°F'])).min(1),
  /** What is corrected: a delivery's volume, or the density that a hydrometer shows. */
  of: z.array(z.enum(['volume', 'density'])).min(1),
  factorTolerance: z.number().positive(),
  /** Of the volume or the density. */
  shareTolerance: z.number().positive(),
});

type Ranges = z.infer<typeof ranges>;

const BASE_C = 15;
/** What printed tables give. */
const DECIMALS = 4;

type Given = NonNullable<ReturnType<typeof measure>>;

export const volumeCorrection = defineExercise({
  id: 'volumeCorrection',
  topics,
  ranges,
  draw(draw) {
    const given = measure(draw);
    if (!given) return undefined;
    const values = worded(given);
    return sumsBody({
      stem: [askedOf(given.of, values), say('volumeCorrection-table')],
      figure: tableFigure(given.table),
      sums: [factorSum(given, draw.ranges.factorTolerance), resultSum(given, draw.ranges.shareTolerance)],
      explanation: [
        ...(given.unit === '°C' ? [] : [say('volumeCorrection-convert', values)]),
        say('volumeCorrection-read', values),
        say(`volumeCorrection-${given.of}-step`, values),
      ],
      topics,
      features: { conversion: Number(given.unit === '°F'), table: 1 },
      seconds: 150,
    });
  },
});

/** Of a sample the density at 15 °C is what is asked for. */
function askedOf(of: Given['of'], values: ReturnType<typeof worded>) {
  return of === 'volume'
    ? say('volumeCorrection-volume', only(values, 'fuel', 'before', 'shown', 'density'))
    : say('volumeCorrection-density', only(values, 'fuel', 'shown', 'before'));
}

function measure({ ranges, catalogue, stream }: Draw<Ranges>) {
  const fuel = stream('fuel').pick([...catalogue.fuels.values()]);
  const unit = stream('unit').pick(ranges.units);
  const shown = shownTemperature(stream('temperature').between(...ranges.temperatureC), unit);
  const celsius = rounded(toSi(shown, unit) - ZERO_CELSIUS, 1);
  if (Math.abs(celsius - BASE_C) < ranges.leastRiseC) return undefined;
  const table = tableOf(fuel, ranges.table);
  const factor = rounded(readTable(table, celsius), DECIMALS);
  const of = stream('of').pick(ranges.of);
  const before =
    of === 'volume'
      ? toStep(stream('volume').between(...ranges.volumeL), ranges.volumeStepL)
      : // As a hydrometer floats: to half a kilogram.
        toStep(densityAt(fuel.density15, celsius + ZERO_CELSIUS), 0.5);
  const misread = readAsCelsius(table, shown, unit);
  return { fuel, unit, shown, celsius, table, factor, of, before, misread };
}

function shownTemperature(celsius: number, unit: '°C' | '°F'): number {
  return Math.round(unit === '°C' ? celsius : celsius * 1.8 + 32);
}

function tableOf({ density15 }: Fuel, { fromC, stepC, rows }: Ranges['table']): PrintedTable {
  const factorAt = (celsius: number) => densityAt(density15, celsius + ZERO_CELSIUS) / density15;
  const values = Array.from({ length: rows }, (_, row) => rounded(factorAt(fromC + row * stepC), DECIMALS));
  return { from: fromC, step: stepC, values };
}

/** The factor of somebody who takes a thermometer in °F for one in °C; none where the table has no such row. */
function readAsCelsius(table: PrintedTable, shown: number, unit: '°C' | '°F'): number | undefined {
  const last = table.from + table.step * (table.values.length - 1);
  return unit === '°C' || shown < table.from || shown > last ? undefined : readTable(table, shown);
}

function tableFigure(table: PrintedTable): Figure {
  return {
    figure: 'table',
    head: [say('head-temperature'), say('head-factor')],
    rows: headsOf(table).map((celsius, row) => [
      say('cell', { value: bare(celsius, 0) }),
      say('cell', { value: bare(table.values[row] ?? Number.NaN, DECIMALS) }),
    ]),
  };
}

function corrected({ of, before }: Pick<Given, 'of' | 'before'>, factor: number): number {
  return of === 'volume' ? before * factor : before / factor;
}

const unitOf = { volume: 'L', density: 'kg/m³' } as const;

function worded(given: Given) {
  const { fuel, unit, shown, celsius, table, factor, of, before } = given;
  const row = Math.min(Math.floor((celsius - table.from) / table.step), table.values.length - 2);
  return {
    fuel: { name: 'fuel', id: fuel.id },
    density: amount(fuel.density15, 'kg/m³', 0),
    shown: amount(shown, unit, 0),
    celsius: amount(celsius, '°C', unit === '°C' ? 0 : 1),
    fahrenheit: bare(shown, 0),
    lowerAt: amount(table.from + row * table.step, '°C', 0),
    upperAt: amount(table.from + (row + 1) * table.step, '°C', 0),
    lower: bare(table.values[row] ?? Number.NaN, DECIMALS),
    upper: bare(table.values[row + 1] ?? Number.NaN, DECIMALS),
    factor: bare(factor, DECIMALS),
    before: amount(before, unitOf[of], of === 'volume' ? 0 : 1),
    after: amount(corrected(given, factor), unitOf[of], 1),
  } as const;
}

function factorSum({ factor, misread }: Given, tolerance: number): Sum {
  return {
    id: 'factor',
    line: say('volumeCorrection-factor'),
    units: [],
    value: factor,
    tolerance,
    slips: [slip('other-way', 1 / factor), ...(misread === undefined ? [] : [slip('fahrenheit-as-celsius', misread)])],
  };
}

function resultSum(given: Given, shareTolerance: number): Sum {
  const { of, before, factor, misread } = given;
  const value = corrected(given, factor);
  const wrongWay = of === 'volume' ? slip('divided-by-factor', before / factor) : slip('times-factor', before * factor);
  return {
    id: 'result',
    line: say(`volumeCorrection-${of}-result`),
    units: of === 'volume' ? ['L', 'US gal'] : ['kg/m³'],
    value,
    tolerance: value * shareTolerance,
    slips: [
      wrongWay,
      slip('no-correction', before),
      ...(misread === undefined ? [] : [slip('fahrenheit-as-celsius', corrected(given, misread))]),
    ],
    follows: { part: 'factor', value: (earlier) => corrected(given, earlier) },
  };
}
