import { useTranslations } from 'next-intl';
import type { StepView } from '@/app/_server/route-views';
import ui from '@/app/_ui/ui.module.css';
import { areas } from '@/lib/areas';
import type { AreaShares } from '@/lib/grading/grade';
import styles from './charts.module.css';

/**
 * The chart in numbers, in percent.
 *
 * @param moments  At the start and after each reading.
 */
export function BeliefTable({ moments, readings }: { moments: readonly AreaShares[]; readings: readonly StepView[] }) {
  const t = useTranslations('debrief');
  const run = useTranslations('conditionsShort');
  const area = useTranslations('areas');
  return (
    <details className={styles.more}>
      <summary>{t('beliefTable')}</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keyboard */}
      <section className={styles.pan} aria-label={t('beliefTablePan')} tabIndex={0}>
        <table className={`${ui.figures} ${styles.table}`}>
          <caption>{t('beliefUnit')}</caption>
          <thead>
            <tr>
              <th scope="col">{t('beliefAfter')}</th>
              {areas.map((id) => (
                <th key={id} scope="col">
                  {area(id)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {moments.map((shares, index) => {
              const reading = readings[index - 1];
              return (
                <tr key={reading?.id ?? 'start'}>
                  <th scope="row">
                    {reading ? `${index} ${reading.check}, ${run(reading.condition)}` : t('beliefStart')}
                  </th>
                  {areas.map((id) => (
                    <td key={id}>{percentOf(shares[id])}</td>
                  ))}
                </tr>
              );
            })}
          </tbody>
        </table>
      </section>
    </details>
  );
}

/** Nothing is ever quite ruled out, and seldom quite sure. */
export function percentOf(share: number): string {
  const percent = 100 * share;
  if (percent > 0 && percent < 0.5) return '< 1';
  return String(Math.round(percent));
}
