import { useTranslations } from 'next-intl';
import ui from '@/app/_ui/ui.module.css';
import { type ReviewQuery, workKinds } from './parse-review-query';
import styles from './review.module.css';

/** Which work is listed. */
export function ReviewFilter({
  asked,
  assignments,
}: {
  asked: ReviewQuery;
  assignments: readonly { id: string; title: string }[];
}) {
  const t = useTranslations('review');
  return (
    <form className={styles.filter} action="/review">
      <label className={ui.field}>
        <span>{t('kindField')}</span>
        <select name="kind" defaultValue={asked.kind}>
          {workKinds.map((kind) => (
            <option key={kind} value={kind}>
              {t(`kind.${kind}`)}
            </option>
          ))}
        </select>
      </label>
      <label className={ui.field}>
        <span>{t('assignmentField')}</span>
        <select name="assignment" defaultValue={asked.assignment ?? ''}>
          <option value="">{t('any')}</option>
          {assignments.map(({ id, title }) => (
            <option key={id} value={id}>
              {title}
            </option>
          ))}
        </select>
      </label>
      <label className={styles.tick}>
        <input type="checkbox" name="unseen" value="yes" defaultChecked={asked.unseen} />
        <span>{t('unseen')}</span>
      </label>
      <button type="submit">{t('show')}</button>
    </form>
  );
}
