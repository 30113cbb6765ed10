import { getTranslations } from 'next-intl/server';
import { ActForm } from '@/app/_ui/act-form';
import type { ActResult } from '@/app/_ui/act-result';
import ui from '@/app/_ui/ui.module.css';
import { MOST_WORDS } from './comments';
import styles from './review.module.css';

/** Points in the place of computed ones, with the reason that the learner reads. */
export async function GivePoints({
  action,
  about,
  label,
  outOf,
  given,
}: {
  action: (form: FormData) => Promise<ActResult>;
  about: Readonly<Record<string, string>>;
  /** What they are points of, for those who only hear the form. */
  label: string;
  outOf: number;
  /** That stand now. */
  given: number | undefined;
}) {
  const t = await getTranslations('review');
  const problems = await getTranslations('problems');
  const hidden = Object.entries(about).map(([name, value]) => (
    <input key={name} type="hidden" name={name} value={value} />
  ));
  const reason = (
    <label className={ui.field}>
      <span>{t('reason')}</span>
      <textarea name="reason" rows={2} maxLength={MOST_WORDS} required />
    </label>
  );
  const form = {
    className: ui.stack,
    action,
    failed: problems('no-answer'),
    done: t('kept'),
    clears: true,
    quiet: true,
  };
  return (
    <details className={styles.more}>
      <summary>
        {t(given === undefined ? 'override' : 'overrideAgain')}
        <span className={ui.unseen}>{` ${label}`}</span>
      </summary>
      <ActForm {...form} submit={t('overrideKeep')}>
        {hidden}
        <label className={ui.field}>
          <span>{t('pointsField', { outOf })}</span>
          <input name="points" type="number" inputMode="decimal" min={0} max={outOf} step="any" required />
        </label>
        {reason}
      </ActForm>
      {given !== undefined && (
        <ActForm {...form} submit={t('takeBack')}>
          {hidden}
          <input type="hidden" name="points" value="" />
          {reason}
        </ActForm>
      )}
    </details>
  );
}
