import { useTranslations } from 'next-intl';
import { topicNames } from '@/app/_server/readiness/topic-names';
import { Sideways } from '@/app/_ui/sideways';
import ui from '@/app/_ui/ui.module.css';
import type { Scheme } from '@/lib/readiness/scheme';
import styles from '../schemes.module.css';

/** What has to be shown, and in which shares. */
export function WhatIsShown({ scheme: { blueprint, text, taskAnalysis, sitting } }: { scheme: Scheme }) {
  const t = useTranslations('schemes');
  const nameOf = topicNames();
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="shown">
      <h2 id="shown">{t('shownTitle')}</h2>
      <p>{text.en.criteria}</p>
      <Sideways label={t('blueprint')}>
        <table className={styles.table}>
          <caption>{t('blueprint')}</caption>
          <thead>
            <tr>
              <th scope="col">{t('topic')}</th>
              <th scope="col">{t('share')}</th>
              <th scope="col">{t('atLeast')}</th>
            </tr>
          </thead>
          <tbody>
            {blueprint.map(({ topic, share, atLeast }) => (
              <tr key={topic}>
                <th scope="row">{nameOf(topic)}</th>
                <td>{t('percent', { share: Math.round(100 * share) })}</td>
                <td>{atLeast}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Sideways>
      <p>{t('combined')}</p>
      <p>{t('sittingIs', { minutes: sitting.minutes, maximum: sitting.maximum })}</p>
      <h3>{t('analysisTitle')}</h3>
      <p>{text.en.taskAnalysis}</p>
      <p className={ui.small}>{t('analysedOn', { on: taskAnalysis.on, months: taskAnalysis.reviewMonths })}</p>
    </section>
  );
}
