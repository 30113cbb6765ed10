import { useTranslations } from 'next-intl';
import type { LimitView, ReadingLine } from '@/app/_server/questions/figure-view';
import type { UnitChoice } from '../display-choices';
import { limitWords } from '../limit-words';
import { printedValue } from '../printed-value';
import { showNumber, withUnit } from '../show-quantity';
import styles from './figure.module.css';

/** Readings as they stand on a job card: what was read, how, and what it came to. */
export function ReadingsFigure({ readings, units }: { readings: readonly ReadingLine[]; units: UnitChoice }) {
  const run = useTranslations('conditionsShort');
  return (
    <ul className={styles.readings}>
      {readings.map((reading, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: readings are never reordered
        <li key={index}>
          <span className={styles.what}>
            <b>{`${reading.quantity ?? reading.check}, ${run(reading.condition)}`}</b>
            <span>{reading.instrument}</span>
          </span>
          <span className={styles.value}>
            <ReadingValue reading={reading} units={units} />
          </span>
        </li>
      ))}
    </ul>
  );
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

/** Lines of a limit sheet. */
export function LimitsFigure({ limits, units }: { limits: readonly LimitView[]; units: UnitChoice }) {
  const t = useTranslations('limits');
  const run = useTranslations('conditionsShort');
  return (
    <ul className={styles.limits}>
      {limits.map(({ line, check, quantity, facts }) => (
        <li key={line.id}>
          <span className={styles.what}>
            <b>{quantity ?? check}</b>
            <span>{quantity ? `${check}, ${run(line.condition)}` : run(line.condition)}</span>
          </span>
          <span className={styles.value}>{limitWords(t, line, units, facts)}</span>
        </li>
      ))}
    </ul>
  );
}
