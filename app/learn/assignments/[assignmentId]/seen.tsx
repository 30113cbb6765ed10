import { useTranslations } from 'next-intl';
import type { GivenView } from '@/app/_server/turns/read-given';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import learn from '../../learn.module.css';

/** What one sees before, during and after. */
export function Seen({
  given: { assignment, tellsAt },
  settings: { dateFormat },
}: {
  given: GivenView;
  settings: OrganizationSettings;
}) {
  const t = useTranslations('turns.see');
  const { mode, timeZone } = assignment.rules;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="seen">
      <h2 id="seen">{t('heading')}</h2>
      <dl className={`${ui.prose} ${learn.stages}`}>
        <dt>
          <b>{t('before')}</b>
        </dt>
        <dd>{t('beforeBody')}</dd>
        <dt>
          <b>{t('during')}</b>
        </dt>
        <dd>{t(`duringBody.${mode}`)}</dd>
        <dt>
          <b>{t('after')}</b>
        </dt>
        <dd>{t(`afterBody.${mode}`, { time: shownTime(tellsAt, { dateFormat, timeZone }) })}</dd>
      </dl>
    </section>
  );
}
