import { getTranslations } from 'next-intl/server';
import { ActForm } from '@/app/_ui/act-form';
import type { ActResult } from '@/app/_ui/act-result';
import { shownTime } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import type { CommentLine } from '@/db/queries/comments';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import styles from './review.module.css';

/** Longest comment, reason or answer. */
export const MOST_WORDS = 2000;

export interface Commenting {
  action: (form: FormData) => Promise<ActResult>;
  /** Hidden fields that say what it is about. */
  about: Readonly<Record<string, string>>;
}

/** What was written to something, and, for those who may, the field for more. */
export async function Comments({
  comments,
  settings,
  commenting,
  label,
}: {
  comments: readonly CommentLine[];
  settings: OrganizationSettings;
  commenting: Commenting | undefined;
  /** What it is about, for those who only hear the field. */
  label: string;
}) {
  const t = await getTranslations('review');
  const problems = await getTranslations('problems');
  if (comments.length === 0 && !commenting) return null;
  return (
    <div className={styles.comments}>
      <CommentList comments={comments} settings={settings} />
      {commenting && (
        <details className={styles.more}>
          <summary>
            {t('comment')}
            <span className={ui.unseen}>{` ${label}`}</span>
          </summary>
          <ActForm
            className={ui.stack}
            action={commenting.action}
            submit={t('commentKeep')}
            failed={problems('no-answer')}
            done={t('kept')}
            clears
            quiet
          >
            {Object.entries(commenting.about).map(([name, value]) => (
              <input key={name} type="hidden" name={name} value={value} />
            ))}
            <label className={ui.field}>
              <span>{t('commentField')}</span>
              <textarea name="text" rows={3} maxLength={MOST_WORDS} required />
            </label>
          </ActForm>
        </details>
      )}
    </div>
  );
}

export async function CommentList({
  comments,
  settings,
}: {
  comments: readonly CommentLine[];
  settings: OrganizationSettings;
}) {
  const t = await getTranslations('review');
  if (comments.length === 0) return null;
  return (
    <ul className={styles.written}>
      {comments.map(({ id, text, writer, writtenAt }) => (
        <li key={id}>
          <p className={styles.words}>{text}</p>
          <p className={ui.small}>{t('by', { who: writer ?? t('erased'), at: shownTime(writtenAt, settings) })}</p>
        </li>
      ))}
    </ul>
  );
}
