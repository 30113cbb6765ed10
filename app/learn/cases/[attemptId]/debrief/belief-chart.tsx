import { useTranslations } from 'next-intl';
import type { DebriefView } from '@/app/_server/debrief-view';
import { type BeliefLine, beliefLines, type Frame } from '@/app/_ui/charts/belief-lines';
import ui from '@/app/_ui/ui.module.css';
import type { Course } from '@/lib/grading/grade';
import { BeliefTable } from './belief-table';
import styles from './charts.module.css';

const FRAME: Frame = { width: 760, height: 330, left: 52, right: 196, top: 14, bottom: 34 };

/** What each reading did to the belief in each area. */
export function BeliefChart({ view: { routes }, course }: { view: DebriefView; course: Course }) {
  const t = useTranslations('debrief');
  const moments = [course.start, ...course.steps.map(({ areas }) => areas)];
  const { lines, moments: along, ticks } = beliefLines(moments, FRAME);
  const foot = FRAME.height - FRAME.bottom;
  return (
    <section className={ui.panel} aria-labelledby="belief">
      <div className={ui.head}>
        <h2 id="belief">{t('belief')}</h2>
        <span className={ui.small}>{t('beliefUnit')}</span>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keyboard */}
      <section className={styles.pan} aria-label={t('beliefPan')} tabIndex={0}>
        <svg
          className={styles.chart}
          viewBox={`0 0 ${FRAME.width} ${FRAME.height}`}
          role="img"
          aria-label={t('beliefLabel')}
        >
          {ticks.map(({ share, y }) => (
            <g key={share}>
              <path className={styles.grid} d={`M${FRAME.left} ${y}H${FRAME.width - FRAME.right}`} />
              <text className={styles.tick} x={FRAME.left - 8} y={y + 4} textAnchor="end">
                {Math.round(100 * share)}
              </text>
            </g>
          ))}
          {along.map((x, index) => (
            <g key={x}>
              <path className={styles.axis} d={`M${x} ${foot}V${foot + 6}`} />
              <text className={styles.tick} x={x} y={foot + 24} textAnchor="middle">
                {index === 0 ? t('beliefStart') : index}
              </text>
            </g>
          ))}
          {[...lines]
            .sort((a, b) => Number(a.named) - Number(b.named))
            .map((line) => (
              <Line key={line.area} line={line} />
            ))}
        </svg>
      </section>
      <p className={ui.small}>{t('beliefHint')}</p>
      <BeliefTable moments={moments} readings={routes.yours} />
    </section>
  );
}

function Line({ line: { area, named, path, dash, hollow, marker, points, labelY } }: { line: BeliefLine }) {
  const t = useTranslations('areas');
  if (!named) return <path className={styles.faint} d={path} />;
  const end = points.at(-1);
  const edge = FRAME.width - FRAME.right;
  return (
    <g>
      <path className={styles.line} d={path} strokeDasharray={dash} />
      {points.map(({ x, y }) => (
        <path key={x} className={hollow ? styles.hollow : styles.solid} d={marker} transform={`translate(${x} ${y})`} />
      ))}
      {end && <path className={styles.leader} d={`M${end.x + 7} ${end.y}L${edge + 16} ${labelY}`} />}
      <path
        className={hollow ? styles.hollow : styles.solid}
        d={marker}
        transform={`translate(${edge + 24} ${labelY})`}
      />
      <text x={edge + 34} y={labelY + 5}>
        {t(area)}
      </text>
    </g>
  );
}
