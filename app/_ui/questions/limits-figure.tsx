import { useTranslations } from 'next-intl';
import type { LimitView } from '@/app/_server/questions/figure-view';
import type { UnitChoice } from '../display-choices';
import { limitWords } from '../limit-words';
import styles from './figure.module.css';

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
