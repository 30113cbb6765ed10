import { useTranslations } from 'next-intl';
import { showNumber } from '../show-quantity';
import ui from '../ui.module.css';
import type { Chart } from './chart';
import { tellingPoints } from './telling-points';
import styles from './trace-chart.module.css';

/** As many rows as one reads through. */
const ROWS = 12;

/** The points that tell most of a chart's shape, for those who read numbers more easily than curves. */
export function TraceTable({ chart: { lines, times, unit } }: { chart: Chart }) {
  const t = useTranslations('gauges.trace');
  const curves = lines.map(({ values }) => values);
  return (
    <details className={styles.more}>
      <summary>{t('table')}</summary>
      <table className={`${ui.figures} ${styles.table}`}>
        <caption>{t('tableHint')}</caption>
        <thead>
          <tr>
            <th scope="col">{t('time')}</th>
            {lines.map(({ id }) => (
              <th key={id} scope="col">
                {t('column', { line: t(`long.${id}`), unit })}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {tellingPoints(times, curves, ROWS).map((index) => (
            <tr key={index}>
              <th scope="row">{showNumber(times[index] ?? 0)}</th>
              {lines.map(({ id, values }) => (
                <td key={id}>{showNumber(values[index] ?? 0)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
