import { useTranslations } from 'next-intl';
import { Fragment } from 'react';
import type { AttemptView, CaseFace } from '@/app/_server/attempt-view';
import type { UnitChoice } from '@/app/_ui/display-choices';
import { showSi } from '@/app/_ui/show-quantity';
import { TroubleCodes } from '@/app/_ui/trouble-codes';
import ui from '@/app/_ui/ui.module.css';
import styles from './case.module.css';

/** What the shop was told, and what the learner has spent on it. */
export function WorkOrder({
  view,
  face,
  units,
  heading: Heading = 'h1',
}: {
  /** Left out on paper, where nobody counts. */
  view?: Pick<AttemptView, 'minutes'>;
  face: CaseFace;
  units: UnitChoice;
  heading?: 'h1' | 'h3';
}) {
  const t = useTranslations('case');
  const { workOrder, rig } = face;
  return (
    <section className={`${ui.panel} ${ui.ticket} ${styles.ticket}`} aria-labelledby="work-order">
      <div>
        <p className={ui.small}>{t('workOrder')}</p>
        <Heading id="work-order">{t(`complaints.${workOrder.complaint}`)}</Heading>
        <p className={ui.small}>
          {t('vehicleLine', {
            rig: rig.text.en.name,
            vehicle: t(`vehicles.${workOrder.vehicle}`),
            km: workOrder.odometerKm.toLocaleString('en'),
          })}
        </p>
        <blockquote className={styles.quote}>{storyWords(t, workOrder.story)}</blockquote>
        {face.mayBeTwo && <p>{t('mayBeTwo')}</p>}
      </div>
      <div>
        <h2>{t('codesTitle')}</h2>
        {workOrder.codes.length > 0 ? <TroubleCodes codes={workOrder.codes} /> : <p>{t('noCodes')}</p>}
      </div>
      <div>
        <h2>{t('setting')}</h2>
        <SettingFacts face={face} units={units} />
        {view && (
          <p className={styles.clock}>
            <span>{t('clock')}</span>
            <b>{t('minutes', { minutes: view.minutes })}</b>
          </p>
        )}
      </div>
    </section>
  );
}

type CaseWords = ReturnType<typeof useTranslations<'case'>>;

/** Which story there are is the generator's matter; one without words is left out. */
function storyWords(t: CaseWords, story: string): string | null {
  const key = `stories.${story}` as Parameters<CaseWords>[0];
  return t.has(key) ? t(key) : null;
}

function SettingFacts({ face: { setting, fuel, rig }, units }: { face: CaseFace; units: UnitChoice }) {
  const t = useTranslations('case');
  const percent = (share: number) => Math.round(share * 100);
  return (
    <dl className={ui.facts}>
      <dt>{t('air')}</dt>
      <dd>{showSi(setting.airTemperature, 'K', units)}</dd>
      <dt>{t('altitude')}</dt>
      <dd>{t('metres', { metres: setting.altitude.toLocaleString('en') })}</dd>
      <dt>{t('fuel')}</dt>
      <dd>{fuel}</dd>
      {rig.ageing.map(({ element, age }) => (
        <Fragment key={element}>
          <dt>{rig.elements.find(({ id }) => id === element)?.text.en}</dt>
          <dd>{t('filterAge', { percent: percent(setting[age]) })}</dd>
        </Fragment>
      ))}
      <dt>{t('lastRan')}</dt>
      <dd>{t('hoursAgo', { hours: setting.hoursStanding })}</dd>
    </dl>
  );
}
