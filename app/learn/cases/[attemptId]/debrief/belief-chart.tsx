import { useTranslations } from 'next-intl';
import type { DebriefView } from '@/app/_server/debrief-view';
import { type BeliefLine, beliefLines, type Frame } from '@/app/_ui/charts/belief-lines';
import ui from '@/app/_ui/ui.module.css';
import type { AreaShares, Course } from '@/lib/grading/grade';
import { BeliefTable } from './belief-table';
import styles from './charts.module.css';

/** Names stand at the ends of the lines. */
const WIDE: Frame = { width: 760, height: 330, left: 40, right: 196, top: 14, bottom: 34 };
/** On a phone there is no room for names beside the lines; they stand below. */
const NARROW: Frame = { width: 350, height: 270, left: 34, right: 12, top: 14, bottom: 34 };

/** What each reading did to the belief in each area. */
export function BeliefChart({ view: { routes }, course }: { view: DebriefView; course: Course }) {
  const t = useTranslations('debrief');
  const moments = [course.start, ...course.steps.map(({ areas }) => areas)];
  return (
    <section className={ui.panel} aria-labelledby="belief">
      <div className={ui.head}>
        <h2 id="belief">{t('belief')}</h2>
        <span className={ui.small}>{t('beliefUnit')}</span>
      </div>
      <div className={styles.wideOnly}>
        <Plot moments={moments} frame={WIDE} namesBeside />
      </div>
      <div className={styles.narrowOnly}>
        <Plot moments={moments} frame={NARROW} />
        <Names moments={moments} />
      </div>
      <p className={ui.small}>{t('beliefHint')}</p>
      <BeliefTable moments={moments} readings={routes.yours} />
    </section>
  );
}

function Plot({
  moments,
  frame,
  namesBeside = false,
}: {
  moments: readonly AreaShares[];
  frame: Frame;
  namesBeside?: boolean;
}) {
  const t = useTranslations('debrief');
  const { lines, moments: along, ticks } = beliefLines(moments, frame);
  const foot = frame.height - frame.bottom;
  return (
    <svg
      className={styles.chart}
      viewBox={`0 0 ${frame.width} ${frame.height}`}
      role="img"
      aria-label={t('beliefLabel')}
    >
      {ticks.map(({ share, y }) => (
        <g key={share}>
          <path className={styles.grid} d={`M${frame.left} ${y}H${frame.width - frame.right}`} />
          <text className={styles.tick} x={frame.left - 8} y={y + 4} textAnchor="end">
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
          <Line key={line.area} line={line} labelX={namesBeside ? frame.width - frame.right + 24 : undefined} />
        ))}
    </svg>
  );
}

function Line({ line, labelX }: { line: BeliefLine; labelX: number | undefined }) {
  const t = useTranslations('areas');
  const { area, named, path, dash, hollow, marker, points, labelY } = line;
  if (!named) return <path className={styles.faint} d={path} />;
  const end = points.at(-1);
  const look = hollow ? styles.hollow : styles.solid;
  return (
    <g>
      <path className={styles.line} d={path} strokeDasharray={dash} />
      {points.map(({ x, y }) => (
        <path key={x} className={look} d={marker} transform={`translate(${x} ${y})`} />
      ))}
      {end && labelX !== undefined && (
        <>
          <path className={styles.leader} d={`M${end.x + 7} ${end.y}L${labelX - 8} ${labelY}`} />
          <path className={look} d={marker} transform={`translate(${labelX} ${labelY})`} />
          <text x={labelX + 10} y={labelY + 5}>
            {t(area)}
          </text>
        </>
      )}
    </g>
  );
}

/** Which line is which, those that end highest first. */
function Names({ moments }: { moments: readonly AreaShares[] }) {
  const t = useTranslations('areas');
  const named = beliefLines(moments, NARROW).lines.filter((line) => line.named);
  return (
    <ul className={styles.names}>
      {named
        .sort((a, b) => a.labelY - b.labelY)
        .map(({ area, dash, hollow, marker }) => (
          <li key={area}>
            <svg viewBox="0 0 44 16" width="44" height="16" aria-hidden="true">
              <path className={styles.line} d="M2 8H42" strokeDasharray={dash} />
              <path className={hollow ? styles.hollow : styles.solid} d={marker} transform="translate(22 8)" />
            </svg>
            {t(area)}
          </li>
        ))}
    </ul>
  );
}
