import { useTranslations } from 'next-intl';
import type { RouteViews } from '@/app/_server/route-views';
import { type RouteBox, type RouteBoxes, routeBoxes } from '@/app/_ui/charts/route-boxes';
import styles from './charts.module.css';
import { letterOf, minutesOf } from './route-words';

/** How wide the drawing is, and from where to where its axis runs. */
export interface Span {
  width: number;
  left: number;
  right: number;
}

const HEIGHT = 190;
const ROW = { yours: 34, expert: 126, height: 30, axis: 95 };
/** Narrower than this a box has no room for its number. */
const ROOM_FOR_NUMBER = 16;

/** The two routes, one above and one below the axis that they share. */
export function TimeLine({ routes: { yours, expert }, frame }: { routes: RouteViews; frame: Span }) {
  const t = useTranslations('debrief');
  const boxes = routeBoxes(yours, expert, frame);
  return (
    <svg
      className={styles.chart}
      viewBox={`0 0 ${frame.width} ${HEIGHT}`}
      role="img"
      aria-label={t('routeLabel', { minutes: minutesOf(yours), expertMinutes: minutesOf(expert) })}
    >
      <Axis ticks={boxes.ticks} frame={frame} />
      {boxes.links.map(({ key, from, to }) => (
        <path
          key={key}
          className={styles.link}
          d={`M${from} ${ROW.yours + ROW.height}V${ROW.axis - 14}L${to} ${ROW.axis + 14}V${ROW.expert}`}
        />
      ))}
      <text x="0" y={ROW.yours + 21}>
        {t('you')}
      </text>
      {boxes.yours.map((box, index) => (
        <YourStep key={yours[index]?.id} box={box} number={index + 1} credit={yours[index]?.credit} />
      ))}
      <text x="0" y={ROW.expert + 21}>
        {t('expert')}
      </text>
      {boxes.expert.map((box, index) => (
        <ExpertStep key={box.key} box={box} letter={letterOf(index)} />
      ))}
    </svg>
  );
}

function Axis({ ticks, frame }: { ticks: RouteBoxes['ticks']; frame: Span }) {
  return (
    <>
      <path className={styles.axis} d={`M${frame.left} ${ROW.axis}H${frame.right}`} />
      {ticks.map(({ minutes, x }) => (
        <g key={minutes}>
          <path className={styles.axis} d={`M${x} ${ROW.axis - 4}V${ROW.axis + 4}`} />
          <path className={styles.grid} d={`M${x} ${ROW.yours - 6}V${ROW.axis - 4}M${x} ${ROW.axis + 4}V162`} />
          <text className={styles.tick} x={x} y="180" textAnchor="middle">
            {minutes}
          </text>
        </g>
      ))}
    </>
  );
}

/** Filled from the foot as far as its minutes were well spent. */
function YourStep({
  box: { x, width },
  number,
  credit,
}: {
  box: RouteBox;
  number: number;
  credit: number | undefined;
}) {
  const filled = ROW.height * (credit ?? 1);
  return (
    <>
      <rect className={styles.box} x={x} y={ROW.yours} width={width} height={ROW.height} />
      <rect className={styles.fill} x={x} y={ROW.yours + ROW.height - filled} width={width} height={filled} />
      {width >= ROOM_FOR_NUMBER && (
        <text className={styles.stepNumber} x={x + width / 2} y={ROW.yours - 8} textAnchor="middle">
          {number}
        </text>
      )}
    </>
  );
}

function ExpertStep({ box: { x, width }, letter }: { box: RouteBox; letter: string }) {
  return (
    <>
      <rect className={styles.fill} x={x} y={ROW.expert} width={width} height={ROW.height} />
      {width >= ROOM_FOR_NUMBER && (
        <text className={styles.onFill} x={x + width / 2} y={ROW.expert + 20} textAnchor="middle">
          {letter}
        </text>
      )}
    </>
  );
}
