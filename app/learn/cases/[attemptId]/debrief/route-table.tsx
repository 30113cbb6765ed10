import { useTranslations } from 'next-intl';
import type { RouteViews } from '@/app/_server/route-views';
import ui from '@/app/_ui/ui.module.css';
import styles from './charts.module.css';

/** The time line in numbers, with what would have told more. */
export function RouteTable({ routes: { yours, expert } }: { routes: RouteViews }) {
  const t = useTranslations('debrief');
  const run = useTranslations('conditionsShort');
  return (
    <details className={styles.more}>
      <summary>{t('routeTable')}</summary>
      <div className={styles.pan}>
        <table className={`${ui.figures} ${styles.table}`}>
          <caption>{t('you')}</caption>
          <thead>
            <tr>
              <th scope="col">{t('colCheck')}</th>
              <th scope="col">{t('colMinutes')}</th>
              <th scope="col">{t('colCredit')}</th>
              <th scope="col" className={styles.words}>
                {t('colBetter')}
              </th>
            </tr>
          </thead>
          <tbody>
            {yours.map(({ seq, check, condition, minutes, credit, better }) => (
              <tr key={seq}>
                <th scope="row">{`${check}, ${run(condition)}`}</th>
                <td>{minutes}</td>
                <td>{credit === undefined ? '–' : t('percent', { percent: Math.round(100 * credit) })}</td>
                <td className={styles.words}>{better ? `${better.check}, ${run(better.condition)}` : '–'}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <table className={`${ui.figures} ${styles.table}`}>
          <caption>{t('expert')}</caption>
          <thead>
            <tr>
              <th scope="col">{t('colCheck')}</th>
              <th scope="col">{t('colMinutes')}</th>
            </tr>
          </thead>
          <tbody>
            {expert.map(({ key, check, condition, minutes }) => (
              <tr key={key}>
                <th scope="row">{`${check}, ${run(condition)}`}</th>
                <td>{minutes}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
