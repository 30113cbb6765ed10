import { getTranslations } from 'next-intl/server';
import type { ReportText } from '@/app/_server/readiness/report-text';
import ui from '@/app/_ui/ui.module.css';
import styles from '../../readiness.module.css';

/** How often such a decision is right and wrong, in plain words and in numbers. */
export async function OddsSection({ text }: { text: ReportText }) {
  const t = await getTranslations('readiness.report');
  const columns = ['colFrom', 'colReady', 'colNotYet', 'colUndecided', 'colMean'] as const;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="odds">
      <h2 id="odds">{t('oddsTitle')}</h2>
      {text.odds.map(({ sentence, caption, rows }) => (
        <div key={sentence} className={ui.stack}>
          <p className={ui.prose}>{sentence}</p>
          <div className={styles.scroll}>
            <table className={`${ui.figures} ${styles.odds}`}>
              <caption>{caption}</caption>
              <thead>
                <tr>
                  {columns.map((column) => (
                    <th key={column} scope="col">
                      {t(column)}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {rows.map(([from, ...shares]) => (
                  <tr key={from}>
                    <th scope="row">{from}</th>
                    {shares.map((share, index) => (
                      <td key={columns[index + 1]}>{share}</td>
                    ))}
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </div>
      ))}
      <p className={ui.prose}>{text.oddsAll}</p>
    </section>
  );
}
