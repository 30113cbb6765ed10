import { getTranslations } from 'next-intl/server';
import { catalogue } from '@/app/_server/catalogue';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { Intake } from '@/db/queries/intakes';
import type { OrganizationSettings } from '@/lib/accounts/settings';

/** What came of it for the person: a word a topic, and no figures. */
export async function Outcome({
  intake: { outcome, finishedAt, end },
  settings,
}: {
  intake: Intake;
  settings: OrganizationSettings;
}) {
  const t = await getTranslations('intakes');
  if (!outcome || !finishedAt) return null;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="outcome">
      <h2 id="outcome">{t('thanks')}</h2>
      <p className={ui.prose}>
        {t('thanksBody', { time: shownTime(finishedAt, settings), tasks: outcome.tasks, minutes: outcome.minutes })}{' '}
        {t(`ended.${end ?? 'decided'}`)}
      </p>
      <dl className={ui.stack}>
        {outcome.topics.map(({ topic, decision }) => (
          <div key={topic}>
            <dt>
              <b>{catalogue().topics.get(topic)?.text.en.name ?? topic}</b>
            </dt>
            <dd>{t(`decided.${decision}`)}</dd>
          </div>
        ))}
      </dl>
      <p className={ui.prose}>{t(`safety.${outcome.safety.code}`)}</p>
      <p className={ui.small}>{t('humanDecides')}</p>
    </section>
  );
}
