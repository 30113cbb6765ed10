import { getTranslations } from 'next-intl/server';
import { ActForm } from '@/app/_ui/act-form';
import type { ActResult } from '@/app/_ui/act-result';
import { shownDate, shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import { MOST_WORDS } from '@/app/review/comments';
import styles from '@/app/review/review.module.css';
import type { Appeal } from '@/db/queries/appeals';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { isOverdue } from '@/lib/reviewing/appeal';
import { withdrawAppeal } from './actions';

/** One's own requests to look again at one thing, each with its state and answer, and the form for another where none is open. */
export async function AppealHere({
  appeals,
  action,
  about,
  settings,
}: {
  appeals: readonly Appeal[];
  action: (form: FormData) => Promise<ActResult>;
  about: Readonly<Record<string, string>>;
  settings: OrganizationSettings;
}) {
  const t = await getTranslations('appeals');
  const problems = await getTranslations('problems');
  const open = appeals.some(({ state }) => state === 'open');
  return (
    <div className={ui.stack}>
      {appeals.map((appeal) => (
        <OwnAppeal key={appeal.id} appeal={appeal} settings={settings} />
      ))}
      {!open && (
        <details className={styles.more}>
          <summary>{t('ask')}</summary>
          <ActForm className={ui.stack} action={action} submit={t('send')} failed={problems('no-answer')} quiet>
            {Object.entries(about).map(([name, value]) => (
              <input key={name} type="hidden" name={name} value={value} />
            ))}
            <label className={ui.field}>
              <span>{t('askField')}</span>
              <textarea name="note" rows={3} maxLength={MOST_WORDS} required />
            </label>
            <p className={ui.small}>{t('askRule')}</p>
          </ActForm>
        </details>
      )}
    </div>
  );
}

async function OwnAppeal({ appeal, settings }: { appeal: Appeal; settings: OrganizationSettings }) {
  const { id, state, note, answer, madeAt, dueAt } = appeal;
  const [t, say, problems] = await Promise.all([
    getTranslations('appeals'),
    getTranslations('review'),
    getTranslations('problems'),
  ]);
  const overdue = isOverdue(state, dueAt.getTime(), Date.now());
  return (
    <section className={styles.comments} aria-label={t('yours')}>
      <p>
        {t('yours')}: <b>{say(`state.${state}`)}</b>
        {state === 'open' && ` · ${say('due', { date: shownDate(dueAt, settings) })}`}{' '}
        {overdue && <strong className={styles.overdue}>{say('overdue')}</strong>}
      </p>
      <p className={styles.words}>{note}</p>
      <p className={ui.small}>{t('sent', { at: shownTime(madeAt, settings) })}</p>
      {answer !== null && (
        <>
          <p className={ui.small}>{say('answered')}</p>
          <p className={styles.words}>{answer}</p>
        </>
      )}
      {state === 'open' && (
        <ActForm action={withdrawAppeal} submit={t('withdraw')} failed={problems('no-answer')} quiet>
          <input type="hidden" name="appealId" value={id} />
        </ActForm>
      )}
    </section>
  );
}
