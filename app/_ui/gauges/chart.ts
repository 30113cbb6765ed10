import type { ShownLine } from '@/lib/checks/shown';
import { fromSi, toSi, type Unit } from '@/lib/units';
import type { UnitChoice } from '../display-choices';
import { displayUnit } from '../show-quantity';
import { type ChartScale, chartScale, onScale } from './chart-scale';
import type { Place } from './label-place';

/** Numbered steps that fit beside each other on the narrowest screen. */
const MOST_STEPS = { along: 10, up: 8 };

/** No line runs along the upper edge, where it could not be told from it. */
const HEADROOM = 1.03;

export interface ChartLine {
  id: ShownLine['id'];
  /** What was asked for is dashed, what was measured is solid. */
  stroke: 'solid' | 'dashed';
  /** In the chart's unit. */
  values: readonly number[];
  places: readonly Place[];
}

/** A recording in the reader's units, laid out on two scales. */
export interface Chart {
  unit: Unit;
  axis: 'pressure' | 'vacuum';
  times: readonly number[];
  time: ChartScale;
  value: ChartScale;
  lines: readonly ChartLine[];
}

export function chartOf(lines: readonly ShownLine[], choice: UnitChoice): Chart {
  const unit = chartUnit(lines, choice);
  const converted = lines.map((line) => ({ line, values: line.values.map((value) => inUnit(value, line.unit, unit)) }));
  const all = converted.flatMap(({ values }) => values);
  const times = lines[0]?.times ?? [];
  const time = chartScale(0, times.at(-1) ?? 1, MOST_STEPS.along);
  const value = chartScale(Math.min(...all), HEADROOM * Math.max(...all), MOST_STEPS.up);
  return {
    unit,
    axis: lines.some(isVacuum) ? 'vacuum' : 'pressure',
    times,
    time,
    value,
    lines: converted.map(({ line, values }) => ({
      id: line.id,
      stroke: line.id.startsWith('commanded') ? 'dashed' : 'solid',
      values,
      places: line.times.map((at, index) => [onScale(at, time), onScale(values[index] ?? 0, value)] as const),
    })),
  };
}

/** The unit up the chart, as the reader chose it. */
export function chartUnit(lines: readonly ShownLine[], choice: UnitChoice): Unit {
  const given = lines[0]?.unit ?? 'kPa';
  const largest = Math.max(...lines.flatMap(({ values, unit }) => values.map((value) => toSi(value, unit))));
  return displayUnit(choice, given, largest, lines.some(isVacuum));
}

function isVacuum({ id }: ShownLine): boolean {
  return id === 'tank-vacuum';
}

function inUnit(value: number, from: Unit, to: Unit): number {
  return Number(fromSi(toSi(value, from), to).toPrecision(6));
}
