import { useTranslations } from 'next-intl';
import type { TraceView } from '@/app/_server/questions/figure-view';
import type { ShownLine } from '@/lib/checks/shown';
import { fromSi, toSi, type Unit } from '@/lib/units';
import type { UnitChoice } from '../display-choices';
import { chartOf, chartUnit } from '../gauges/chart';
import { onScale } from '../gauges/chart-scale';
import { TraceChart } from '../gauges/trace-chart';
import { showNumber, withUnit } from '../show-quantity';
import styles from './figure.module.css';
import type { Area } from './placed-group';

/** A recorder's chart with lettered stretches over it. `over` lies on its paper, in shares of its size. */
export function TraceFigure({ on, units, over }: { on: TraceView; units: UnitChoice; over?: React.ReactNode }) {
  const { gauge, lines, stretches, sound } = on;
  return (
    <div className={styles.figure}>
      <TraceChart
        gauge={gauge}
        lines={lines}
        units={units}
        tabled={sound?.times ?? []}
        over={
          stretches.length > 0 && (
            <>
              {stretches.map((stretch) => (
                <span key={stretch.id} className={styles.stretch} style={{ ...stretchArea(stretch, on, units) }}>
                  <span className={styles.letter} aria-hidden="true">
                    {stretch.letter}
                  </span>
                </span>
              ))}
              {over}
            </>
          )
        }
      />
      {sound && <SoundPoints sound={sound} unit={chartUnit(lines, units)} />}
    </div>
  );
}

/** What the sound engine does, point by point, in the unit of the chart. */
function SoundPoints({ sound: { times, values, unit: given }, unit }: { sound: ShownLine; unit: Unit }) {
  const t = useTranslations('questions.sound');
  return (
    <section>
      <p className={styles.title}>{t('title')}</p>
      <dl className={styles.points}>
        {times.map((time, index) => (
          <div key={time}>
            <dt>{t('at', { time: showNumber(time) })}</dt>
            <dd>{withUnit(showNumber(fromSi(toSi(values[index] ?? 0, given), unit)), unit)}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

/** The full height of the paper, from one time to another. */
export function stretchArea(
  { from, to }: { from: number; to: number },
  { lines }: Pick<TraceView, 'lines'>,
  units: UnitChoice,
): Area {
  const { time } = chartOf(lines, units);
  const [left, right] = [from, to].map((at) => Math.min(1, Math.max(0, onScale(at, time)))) as [number, number];
  return { left: percent(left), top: '0%', width: percent(right - left), height: '100%' };
}

function percent(share: number): string {
  return `${Number((100 * share).toFixed(3))}%`;
}
