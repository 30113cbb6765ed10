import { getTranslations } from 'next-intl/server';
import { topicNames } from '@/app/_server/readiness/topic-names';
import ui from '@/app/_ui/ui.module.css';
import type { RoleProfile } from '@/lib/readiness/profile';
import styles from './profiles.module.css';

/** What a role profile asks for, in words. */
export async function ProfileFacts({ profile }: { profile: RoleProfile }) {
  const t = await getTranslations('profiles');
  const names = topicNames();
  const { topics, safety, handsOn, source } = profile;
  return (
    <>
      <table className={`${ui.figures} ${styles.topics}`}>
        <caption>{t('topicsCaption')}</caption>
        <thead>
          <tr>
            <th scope="col">{t('topic')}</th>
            <th scope="col">{t('cut')}</th>
            <th scope="col">{t('confidence')}</th>
          </tr>
        </thead>
        <tbody>
          {topics.map(({ topic, cut, confidence }) => (
            <tr key={topic}>
              <th scope="row">{names(topic)}</th>
              <td>{cut.toFixed(2)}</td>
              <td>{confidence.toFixed(2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <ul className={styles.facts}>
        <li>{t('minimumFact', { minimum: profile.minimum, maximum: profile.maximum, minutes: profile.minutes })}</li>
        <li>{t('safetyFact', { ...safety })}</li>
        <li>{t('recentFact', { days: profile.recentDays, months: profile.validMonths })}</li>
        <li>{handsOn ? t('handsOnFact', { count: handsOn.length }) : t('noHandsOnFact')}</li>
        {source.kind === 'assumed' && <li className={ui.small}>{t('assumed', { because: source.because })}</li>}
      </ul>
    </>
  );
}
