import { useTranslations } from 'next-intl';
import type { DebriefView } from '@/app/_server/debrief-view';
import type { StepView } from '@/app/_server/route-views';
import ui from '@/app/_ui/ui.module.css';
import styles from './charts.module.css';
import { RouteTable } from './route-table';
import { letterOf, minutesOf } from './route-words';
import { type Span, TimeLine } from './time-line';

const WIDE: Span = { width: 760, left: 66, right: 746 };
const NARROW: Span = { width: 350, left: 52, right: 342 };

/** Where the shop time went, against the expert's way, on one axis. */
export function TwoRoutes({ view: { routes } }: { view: DebriefView }) {
  const t = useTranslations('debrief');
  const { yours, expert } = routes;
  const both = yours.some(({ key }) => expert.some((step) => step.key === key));
  const judged = yours.some(({ credit }) => credit !== undefined);
  return (
    <section className={ui.panel} aria-labelledby="route">
      <div className={ui.head}>
        <h2 id="route">{t('route')}</h2>
        <span className={ui.small}>{t('routeUnit')}</span>
      </div>
      <div className={styles.wideOnly}>
        <TimeLine routes={routes} frame={WIDE} />
      </div>
      <div className={styles.narrowOnly}>
        <TimeLine routes={routes} frame={NARROW} />
      </div>
      <p className={ui.small}>
        {judged && t('creditHint')} {both && t('linkHint')} {t('routeHint')}
      </p>
      <div className={styles.lists}>
        <StepList title={t('you')} total={minutesOf(yours)} steps={yours} mark={(index) => String(index + 1)} />
        <StepList title={t('expert')} total={minutesOf(expert)} steps={expert} mark={letterOf} />
      </div>
      <RouteTable routes={routes} />
    </section>
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
