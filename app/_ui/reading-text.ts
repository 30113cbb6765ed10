import type { ReadingItem } from '@/app/_server/attempt-view';
import type { UnitChoice } from './display-choices';
import { printedValue } from './printed-value';
import { showNumber, withUnit } from './show-quantity';

/** What an instrument says in print or an eye in words; undefined where there is a scale to be read. */
export function readingText({ shown, gauge, grades }: ReadingItem, units: UnitChoice): string | undefined {
  if (shown.kind !== 'value' || !gauge) return undefined;
  if (gauge.display === 'eye' && grades) return grades[shown.value] ?? showNumber(shown.value);
  if (gauge.display !== 'digital' && gauge.display !== 'eye') return undefined;
  const { digits, unit } = printedValue(shown.value, shown.unit, gauge.resolution, units);
  return withUnit(digits, unit);
}
