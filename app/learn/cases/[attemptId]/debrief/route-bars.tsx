import { useTranslations } from 'next-intl';
import { catalogue } from '@/app/_server/catalogue';
import type { DebriefView } from '@/app/_server/debrief-view';
import ui from '@/app/_ui/ui.module.css';
import styles from './debrief.module.css';

interface Step {
  key: string;
  name: string;
  minutes: number;
}

/** Where the shop time went, against the shortest route that would have told. */
export function Route({ view: { attempt, grade } }: { view: DebriefView }) {
  const t = useTranslations('debrief');
  const run = useTranslations('conditionsShort');
  const yours = attempt.readings.map(({ seq, check, condition, minutes }) => ({
    key: String(seq),
    name: `${check.name}, ${run(condition)}`,
    minutes,
  }));
  const expert = grade.expertRoute.map(({ check, condition, minutes }) => ({
    key: `${check} ${condition}`,
    name: `${catalogue().checks.get(check)?.text.en.name ?? check}, ${run(condition)}`,
    minutes,
  }));
  const longest = Math.max(grade.minutes, total(expert), 1);
  return (
    <section className={ui.panel} aria-labelledby="route">
      <div className={ui.head}>
        <h2 id="route">{t('route')}</h2>
        <span className={ui.small}>{t('routeUnit')}</span>
      </div>
      <Steps title={t('you')} steps={yours} longest={longest} />
      <Steps title={t('expert')} steps={expert} longest={longest} />
      <p className={ui.small}>{t('routeHint')}</p>
    </section>
  );
}

function total(steps: readonly Step[]): number {
  return steps.reduce((sum, { minutes }) => sum + minutes, 0);
}

function Steps({ title, steps, longest }: { title: string; steps: readonly Step[]; longest: number }) {
  const t = useTranslations('debrief');
  return (
    <div className={styles.route}>
      <p className={styles.routeHead}>
        <b>{title}</b> <span>{t('routeMinutes', { minutes: total(steps) })}</span>
      </p>
      <div className={styles.routeBar} aria-hidden="true">
        {steps.map(({ key, minutes }) => (
          <i key={key} style={{ width: `${(100 * minutes) / longest}%` }} />
        ))}
      </div>
      <ol className={styles.routeSteps}>
        {steps.map(({ key, name, minutes }) => (
          <li key={key}>
            <span>{name}</span>
            <span>{t('routeMinutes', { minutes })}</span>
          </li>
        ))}
      </ol>
    </div>
  );
}
