import { useTranslations } from 'next-intl';
import type { ReadingLine } from '@/app/_server/questions/figure-view';
import type { Unit } from '@/lib/units';
import type { UnitChoice } from '../display-choices';
import { limitWordsIn } from '../limit-words';
import { printedValue } from '../printed-value';
import { showNumber, withUnit } from '../show-quantity';
import { VerdictMark } from '../verdict-mark';
import styles from './figure.module.css';

/** Readings as they stand on a job card: what was read and how, what it came to, its limit and the verdict. */
export function ReadingsFigure({ readings, units }: { readings: readonly ReadingLine[]; units: UnitChoice }) {
  const t = useTranslations('questions.readings');
  const judged = readings.some((reading) => reading.judged);
  return (
    <table className={styles.readings}>
      <thead>
        <tr>
          <th scope="col">{t('reading')}</th>
          {judged && <th scope="col">{t('limit')}</th>}
          {judged && <th scope="col">{t('verdict')}</th>}
        </tr>
      </thead>
      {readings.map((reading, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: readings are never reordered
        <tbody key={index}>
          <tr>
            <th scope="rowgroup" colSpan={judged ? 3 : 1} className={styles.what}>
              <WhatWasRead reading={reading} />
            </th>
          </tr>
          <tr>
            <td className={styles.value}>
              <ReadingValue reading={reading} units={units} />
            </td>
            {reading.judged && <Judged reading={reading} judged={reading.judged} units={units} />}
          </tr>
        </tbody>
      ))}
    </table>
  );
}

function WhatWasRead({ reading: { quantity, check, condition, instrument } }: { reading: ReadingLine }) {
  const run = useTranslations('conditionsShort');
  return (
    <>
      <b>{`${quantity ?? check}, ${run(condition)}`}</b>
      <span>{instrument}</span>
    </>
  );
}

/** The limit in the unit that the reading is in, so that the two can be compared. */
function Judged({
  reading,
  judged: { line, facts, verdict },
  units,
}: {
  reading: ReadingLine;
  judged: NonNullable<ReadingLine['judged']>;
  units: UnitChoice;
}) {
  const t = useTranslations('limits');
  return (
    <>
      <td>{limitWordsIn(t, line, shownUnit(reading, units) ?? line.unit, facts)}</td>
      <td>
        <VerdictMark verdict={verdict} />
      </td>
    </>
  );
}

function shownUnit({ shown, gauge }: ReadingLine, units: UnitChoice): Unit | undefined {
  if (!('unit' in shown)) return undefined;
  return shown.kind === 'value' ? printedValue(shown.value, shown.unit, gauge.resolution, units).unit : shown.unit;
}

function ReadingValue({ reading: { shown, gauge, grades }, units }: { reading: ReadingLine; units: UnitChoice }) {
  const t = useTranslations('findings');
  const say = useTranslations('questions');
  switch (shown.kind) {
    case 'codes':
      return shown.codes.length === 0
        ? t('codeCount', { count: 0 })
        : shown.codes.map(({ spn, fmi }) => `SPN ${spn} · FMI ${fmi}`).join(', ');
    case 'destroyed':
    case 'jet':
      return t(shown.kind);
    case 'off-scale': {
      const value = withUnit(showNumber(shown.limit), shown.unit);
      return shown.end === 'high' ? t('over', { value }) : t('under', { value });
    }
    case 'value': {
      if (grades) return grades[shown.value] ?? showNumber(shown.value);
      const { digits, unit } = printedValue(shown.value, shown.unit, gauge.resolution, units);
      const value = withUnit(digits, unit);
      return shown.flutter ? say('swinging', { value, amount: withUnit(showNumber(shown.flutter), unit) }) : value;
    }
  }
}
