import type { useTranslations } from 'next-intl';
import type { LimitFacts } from '@/app/_server/limit-facts';
import type { LimitLine } from '@/lib/rig/rig';
import { fromSi, toSi, type Unit } from '@/lib/units';
import type { UnitChoice } from './display-choices';
import { displayUnit, showNumber, withUnit } from './show-quantity';

type LimitWords = ReturnType<typeof useTranslations<'limits'>>;

/** A limit in the reader's units, such as “at least 70 kPa”, “1.15 to 1.4 MPa” or “no worse than “damp””. */
export function limitWords(t: LimitWords, line: LimitLine, choice: UnitChoice, facts: LimitFacts): string {
  const { min, max, unit } = line;
  const ends = [min, max].flatMap((end) => (end === undefined ? [] : [toSi(end, unit)]));
  return limitWordsIn(t, line, displayUnit(choice, unit, Math.max(...ends.map(Math.abs)), facts.vacuum), facts);
}

/** The same in one unit, so that it can be compared with what an instrument prints. */
export function limitWordsIn(t: LimitWords, line: LimitLine, shownIn: Unit, { grades }: LimitFacts): string {
  if (line.unit === 'grade') return gradeLimit(t, line, grades);
  const { min, max, unit } = line;
  const number = (end: number) => showNumber(fromSi(toSi(end, unit), shownIn));
  if (min === undefined) return t('max', { max: withUnit(number(max ?? 0), shownIn) });
  if (max === undefined) return t('min', { min: withUnit(number(min), shownIn) });
  return t('range', { min: number(min), max: withUnit(number(max), shownIn) });
}

/** The worst that an eye may see: a limit may stand between two grades, and the one below it is still allowed. */
function gradeLimit(t: LimitWords, { min, max }: LimitLine, grades: readonly string[] = []): string {
  const worst = Math.floor(max ?? min ?? 0);
  return t('noWorse', { word: grades[worst] ?? String(worst) });
}
