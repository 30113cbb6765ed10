import { useTranslations } from 'next-intl';
import type { DebriefView } from '@/app/_server/debrief-view';
import type { StepView } from '@/app/_server/route-views';
import { type RouteBox, routeBoxes } from '@/app/_ui/charts/route-boxes';
import ui from '@/app/_ui/ui.module.css';
import styles from './charts.module.css';
import { RouteTable } from './route-table';

const FRAME = { width: 760, height: 190, left: 66, right: 746 };
const ROW = { yours: 34, expert: 126, height: 30, axis: 95 };
/** Narrower than this a box has no room for its number. */
const ROOM_FOR_NUMBER = 16;

/** Where the shop time went, against the expert's way, on one axis. */
export function TwoRoutes({ view: { routes, grade } }: { view: DebriefView }) {
  const t = useTranslations('debrief');
  const { yours, expert } = routes;
  const boxes = routeBoxes(yours, expert, FRAME);
  const expertMinutes = expert.reduce((sum, { minutes }) => sum + minutes, 0);
  const judged = yours.some(({ credit }) => credit !== undefined);
  return (
    <section className={ui.panel} aria-labelledby="route">
      <div className={ui.head}>
        <h2 id="route">{t('route')}</h2>
        <span className={ui.small}>{t('routeUnit')}</span>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keyboard */}
      <section className={styles.pan} aria-label={t('routePan')} tabIndex={0}>
        <svg
          className={styles.chart}
          viewBox={`0 0 ${FRAME.width} ${FRAME.height}`}
          role="img"
          aria-label={t('routeLabel', { minutes: grade.minutes, expertMinutes })}
        >
          <Axis ticks={boxes.ticks} />
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
            <YourStep key={yours[index]?.seq} box={box} number={index + 1} credit={yours[index]?.credit} />
          ))}
          <text x="0" y={ROW.expert + 21}>
            {t('expert')}
          </text>
          {boxes.expert.map((box, index) => (
            <ExpertStep key={box.key} box={box} letter={letterOf(index)} />
          ))}
        </svg>
      </section>
      <p className={ui.small}>
        {judged && t('creditHint')} {boxes.links.length > 0 && t('linkHint')} {t('routeHint')}
      </p>
      <div className={styles.lists}>
        <StepList title={t('you')} total={grade.minutes} steps={yours} mark={(index) => String(index + 1)} />
        <StepList title={t('expert')} total={expertMinutes} steps={expert} mark={letterOf} />
      </div>
      <RouteTable routes={routes} />
    </section>
  );
}

function letterOf(index: number): string {
  return String.fromCharCode('A'.charCodeAt(0) + index);
}

function Axis({ ticks }: { ticks: readonly { minutes: number; x: number }[] }) {
  return (
    <>
      <path className={styles.axis} d={`M${FRAME.left} ${ROW.axis}H${FRAME.right}`} />
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

/** What the numbers and letters of the drawing stand for. */
function StepList({
  title,
  total,
  steps,
  mark,
}: {
  title: string;
  total: number;
  steps: readonly StepView[];
  mark: (index: number) => string;
}) {
  const t = useTranslations('debrief');
  const run = useTranslations('conditionsShort');
  return (
    <div>
      <h3>{t('routeTotal', { who: title, minutes: total })}</h3>
      {steps.length === 0 && <p className={ui.small}>{t('routeNone')}</p>}
      <ol className={styles.steps}>
        {steps.map(({ id, check, condition, minutes }, index) => (
          <li key={id}>
            <b>{mark(index)}</b>
            <span>{`${check}, ${run(condition)}`}</span>
            <span>{t('routeMinutes', { minutes })}</span>
          </li>
        ))}
      </ol>
    </div>
  );
}
