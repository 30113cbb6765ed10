import type { useTranslations } from 'next-intl';
import type { LimitLine } from '@/lib/rig/rig';
import { fromSi, toSi } from '@/lib/units';
import type { UnitChoice } from './display-choices';
import { displayUnit, showNumber, withUnit } from './show-quantity';

/** A limit in the reader's units, such as “at least 70 kPa” or “1.15 to 1.4 MPa”. */
export function limitWords(
  t: ReturnType<typeof useTranslations<'limits'>>,
  { min, max, unit }: LimitLine,
  choice: UnitChoice,
  vacuum: boolean,
): string {
  const ends = [min, max].flatMap((end) => (end === undefined ? [] : [toSi(end, unit)]));
  const shownIn = displayUnit(choice, unit, Math.max(...ends.map(Math.abs)), vacuum);
  const number = (end: number) => showNumber(fromSi(toSi(end, unit), shownIn));
  if (min === undefined) return t('max', { max: withUnit(number(max ?? 0), shownIn) });
  if (max === undefined) return t('min', { min: withUnit(number(min), shownIn) });
  return t('range', { min: number(min), max: withUnit(number(max), shownIn) });
}
