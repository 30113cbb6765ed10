import { useTranslations } from 'next-intl';
import { ActForm } from '@/app/_ui/act-form';
import { Field } from '@/app/_ui/field';
import ui from '@/app/_ui/ui.module.css';
import type { Named } from '../start-random';
import { startCheck } from './actions';
import { MINUTES, QUESTIONS } from './check-limits';
import styles from './questions.module.css';

const USUAL_QUESTIONS = 10;
const USUAL_MINUTES = 20;

/** A check of oneself: on which topics, how many questions, how long. */
export function CheckForm({ topics }: { topics: readonly Named[] }) {
  const t = useTranslations('sittings');
  const problems = useTranslations('problems');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="check">
      <h2 id="check">{t('checkTitle')}</h2>
      <p className={ui.prose}>{t('checkBody')}</p>
      <ActForm className={ui.stack} action={startCheck} submit={t('check')} failed={problems('start-failed')}>
        <fieldset className={styles.topics}>
          <legend className={ui.label}>{t('topics')}</legend>
          {topics.map(({ id, name }) => (
            <label key={id} className={styles.topic}>
              <input type="checkbox" name="topics" value={id} defaultChecked />
              <span>{name}</span>
            </label>
          ))}
        </fieldset>
        <div className={styles.amounts}>
          <div>
            <Field
              label={t('howMany')}
              rule={t('howManyRule', QUESTIONS)}
              name="questions"
              type="number"
              inputMode="numeric"
              min={QUESTIONS.least}
              max={QUESTIONS.most}
              defaultValue={USUAL_QUESTIONS}
              required
            />
          </div>
          <div>
            <Field
              label={t('minutes')}
              rule={t('minutesRule', MINUTES)}
              name="minutes"
              type="number"
              inputMode="numeric"
              min={MINUTES.least}
              max={MINUTES.most}
              defaultValue={USUAL_MINUTES}
            />
          </div>
        </div>
      </ActForm>
    </section>
  );
}
