import { getTranslations } from 'next-intl/server';
import { ActForm } from '@/app/_ui/act-form';
import { shownDate, shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { Appeal } from '@/db/queries/appeals';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { isOverdue } from '@/lib/reviewing/appeal';
import { decideAppeal } from './appeals/actions';
import { MOST_WORDS } from './comments';
import styles from './review.module.css';

interface Shown {
  settings: OrganizationSettings;
  now: Date;
  writes: boolean;
}

/** What a learner asked to be looked at again, and how it was decided. */
export async function AppealsOf({
  appeals,
  ...shown
}: Shown & { appeals: readonly (Appeal & { decider: string | null })[] }) {
  const t = await getTranslations('review');
  if (appeals.length === 0) return null;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="appeals">
      <h2 id="appeals">{t('appeals')}</h2>
      <ul className={styles.parts}>
        {appeals.map((appeal) => (
          <li key={appeal.id} id={`appeal-${appeal.id}`}>
            <AppealBody appeal={appeal} {...shown} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** One appeal: its state, what it says, what was answered, and the form that answers it. */
export async function AppealBody({ appeal, settings, now, writes }: Shown & { appeal: Appeal }) {
  const t = await getTranslations('review');
  const problems = await getTranslations('problems');
  const { id, state, note, answer, place, dueAt, decidedAt } = appeal;
  const overdue = isOverdue(state, dueAt.getTime(), now.getTime());
  return (
    <div className={ui.stack}>
      <p>
        <b>{t(`state.${state}`)}</b>
        {place !== null && ` · ${t('question', { place })}`}
        {state === 'open' && ` · ${t('due', { date: shownDate(dueAt, settings) })}`}
        {overdue && (
          <>
            {' '}
            <strong className={styles.overdue}>{t('overdue')}</strong>
          </>
        )}
      </p>
      <p className={styles.words}>{note}</p>
      {answer !== null && (
        <>
          <p className={ui.small}>
            {t('answered')}
            {decidedAt && ` · ${shownTime(decidedAt, settings)}`}
          </p>
          <p className={styles.words}>{answer}</p>
        </>
      )}
      {state === 'open' && writes && (
        <ActForm className={ui.stack} action={decideAppeal} submit={t('decide')} failed={problems('no-answer')}>
          <input type="hidden" name="appealId" value={id} />
          <fieldset className={styles.choose}>
            <legend className={ui.label}>{t('decision')}</legend>
            {(['upheld', 'declined'] as const).map((one) => (
              <label key={one}>
                <input type="radio" name="state" value={one} required />
                {t(`decide${one === 'upheld' ? 'Upheld' : 'Declined'}`)}
              </label>
            ))}
          </fieldset>
          <label className={ui.field}>
            <span>{t('answerField')}</span>
            <textarea name="answer" rows={3} maxLength={MOST_WORDS} required />
          </label>
          <p className={ui.small}>{t('decideBody')}</p>
        </ActForm>
      )}
    </div>
  );
}
