import { getTranslations } from 'next-intl/server';
import ui from '@/app/_ui/ui.module.css';
import styles from '../assignments.module.css';
import { shownToldAt, type Told } from './rules-in-words';

/** What a learner sees before, during and after, so that nobody has to try it out. */
export async function WhatLearnersSee(told: Told) {
  const { mode } = told.found.rules;
  const t = await getTranslations('assignments.see');
  const stages = [
    ['before', t('before')],
    ['during', t(`during.${mode}`)],
    ['after', mode === 'assessed' ? t('after.assessed', { told: shownToldAt(told) }) : t('after.practice')],
  ] as const;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="see">
      <h2 id="see">{t('heading')}</h2>
      {stages.map(([stage, words]) => (
        <div key={stage} className={styles.one}>
          <h3>{t(`stages.${stage}`)}</h3>
          <p className={ui.prose}>{words}</p>
        </div>
      ))}
    </section>
  );
}
