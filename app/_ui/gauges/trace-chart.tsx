import { useTranslations } from 'next-intl';
import type { ShownLine } from '@/lib/checks/shown';
import type { Gauge } from '@/lib/gauges/gauge';
import type { UnitChoice } from '../display-choices';
import { showNumber } from '../show-quantity';
import { type Chart, type ChartLine, chartOf } from './chart';
import { type ChartScale, gridLines, onScale } from './chart-scale';
import { type LabelPlace, labelPlaces } from './label-place';
import styles from './trace-chart.module.css';
import { TraceTable } from './trace-table';

/** A recorder's chart, to be read by eye: the value asked for stands nowhere in print. */
export function TraceChart({
  gauge,
  lines,
  units,
  over,
  tabled = [],
}: {
  gauge: Gauge;
  lines: readonly ShownLine[];
  units: UnitChoice;
  /** Lies on the paper, in shares of its size, and is no part of the picture. */
  over?: React.ReactNode;
  /** Times, in seconds, that its table has rows for whatever the curves do there. */
  tabled?: readonly number[];
}) {
  const t = useTranslations('gauges.trace');
  const chart = chartOf(lines, units);
  const places = labelPlaces(chart.lines.map((line) => line.places));
  const names = chart.lines.flatMap((line, index) => (places[index] ? [{ line, place: places[index] }] : []));
  const numbers = gridLines(chart.value).filter(({ numbered }) => numbered);
  const widest = Math.max(...numbers.map(({ value }) => showNumber(value).length));
  const axis = t(`axes.${chart.axis}`, { unit: chart.unit });
  const indent = { paddingLeft: `${widest + 0.7}ch` };
  return (
    <div className={over ? `${styles.trace} ${styles.roomy}` : styles.trace}>
      <div role="img" aria-label={useChartText(gauge, chart)}>
        <p className={styles.axis}>{axis}</p>
        <div className={styles.sheet} style={indent}>
          <div className={styles.plot}>
            <Paper chart={chart} />
            <Numbers scale={chart.value} side="left" />
            <Numbers scale={chart.time} side="bottom" />
            {names.map(({ line, place }) => (
              <LineName key={line.id} line={line} place={place} />
            ))}
          </div>
        </div>
        <p className={`${styles.axis} ${styles.along}`}>{t('seconds')}</p>
      </div>
      {over && (
        // The same lines once more, unseen, so that its paper lies on the other's.
        <div className={styles.over}>
          <p className={styles.axis} aria-hidden="true">
            {axis}
          </p>
          <div className={styles.sheet} style={indent}>
            <div className={styles.plot}>{over}</div>
          </div>
        </div>
      )}
      <TraceTable chart={chart} tabled={tabled} />
    </div>
  );
}

const SIZE = 1000;

/** Grid and curves. Stretched to the room there is; strokes keep their width. */
function Paper({ chart }: { chart: Chart }) {
  const along = gridLines(chart.time).map(({ value, numbered }) => ({ at: onScale(value, chart.time), numbered }));
  const up = gridLines(chart.value).map(({ value, numbered }) => ({ at: 1 - onScale(value, chart.value), numbered }));
  const path = (fine: boolean) =>
    [
      ...along.filter(({ numbered }) => numbered !== fine).map(({ at }) => `M${scaled(at)} 0V${SIZE}`),
      ...up.filter(({ numbered }) => numbered !== fine).map(({ at }) => `M0 ${scaled(at)}H${SIZE}`),
    ].join('');
  return (
    <svg className={styles.paper} viewBox={`0 0 ${SIZE} ${SIZE}`} preserveAspectRatio="none" aria-hidden="true">
      <path className={styles.fine} d={path(true)} />
      <path className={styles.grid} d={path(false)} />
      {chart.lines.map(({ id, stroke, places }) => (
        <path key={id} className={styles[stroke]} d={curve(places)} />
      ))}
    </svg>
  );
}

function curve(places: ChartLine['places']): string {
  return `M${places.map(([x, y]) => `${scaled(x)} ${scaled(1 - y)}`).join('L')}`;
}

function scaled(share: number): number {
  return Number((share * SIZE).toFixed(1));
}

function Numbers({ scale, side }: { scale: ChartScale; side: 'left' | 'bottom' }) {
  return gridLines(scale)
    .filter(({ numbered }) => numbered)
    .map(({ value }) => (
      <span
        key={value}
        className={styles[side]}
        style={{ [side === 'left' ? 'bottom' : 'left']: percent(value, scale) }}
      >
        {showNumber(value)}
      </span>
    ));
}

function percent(value: number, scale: ChartScale): string {
  return `${Number((100 * onScale(value, scale)).toFixed(2))}%`;
}

function LineName({ line: { id, stroke }, place: { x, y } }: { line: ChartLine; place: LabelPlace }) {
  const t = useTranslations('gauges.trace');
  return (
    <span className={styles.name} style={{ left: `${(100 * x).toFixed(1)}%`, bottom: `${(100 * y).toFixed(1)}%` }}>
      <svg width="22" height="8" aria-hidden="true">
        <path className={styles[stroke]} d="M0 4H22" />
      </svg>
      {t(`lines.${id}`)}
    </span>
  );
}

function useChartText(gauge: Gauge, { lines, times, time, value, unit, axis }: Chart): string {
  const t = useTranslations('gauges.trace');
  const said = lines.map(({ id, stroke, values }) => {
    const highest = Math.max(...values);
    return t('line', {
      line: t(`long.${id}`),
      stroke: t(`stroke.${stroke}`),
      start: showNumber(values[0] ?? 0),
      highest: showNumber(highest),
      at: showNumber(times[values.indexOf(highest)] ?? 0),
      end: showNumber(values.at(-1) ?? 0),
    });
  });
  return t('label', {
    name: gauge.text.en.name,
    axis: t(`axes.${axis}`, { unit }),
    seconds: showNumber(time.max),
    x: showNumber(time.minor),
    y: showNumber(value.minor),
    lines: said.join(' '),
  });
}
