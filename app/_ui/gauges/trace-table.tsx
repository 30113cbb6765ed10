import { useTranslations } from 'next-intl';
import { showNumber } from '../show-quantity';
import ui from '../ui.module.css';
import type { Chart } from './chart';
import { type Curve, tellingPoints } from './telling-points';
import styles from './trace-chart.module.css';

/** As many rows as one reads through. */
const ROWS = 12;

/** Indexes of the points that tell most, and of those next to the times that are asked for. */
export function rowsOf(times: readonly number[], curves: readonly Curve[], tabled: readonly number[]): number[] {
  const asked = tabled.map((at) => times.findIndex((time) => time >= at - 1e-9)).filter((index) => index >= 0);
  return [...new Set([...tellingPoints(times, curves, ROWS), ...asked])].sort((a, b) => a - b);
}

/** The points that tell most of a chart's shape, for those who read numbers more easily than curves. */
export function TraceTable({ chart: { lines, times, unit }, tabled }: { chart: Chart; tabled: readonly number[] }) {
  const t = useTranslations('gauges.trace');
  const curves = lines.map(({ values }) => values);
  const rows = rowsOf(times, curves, tabled);
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
          {rows.map((index) => (
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
