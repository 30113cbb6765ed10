import Link from 'next/link';
import { useTranslations } from 'next-intl';
import { shownDate } from '@/app/_ui/shown-date';
import { topicsIn, type VersionLine } from '@/db/queries/written-questions';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import styles from './questions.module.css';

/** Questions in lines; on a narrow screen each in a block of its own. */
export function QuestionTable({
  questions,
  topics,
  settings,
}: {
  questions: readonly VersionLine[];
  topics: readonly { id: string; name: string }[];
  settings: OrganizationSettings;
}) {
  const t = useTranslations('written');
  const names = new Map(topics.map(({ id, name }) => [id, name]));
  return (
    <table className={styles.questions}>
      <thead>
        <tr>
          <th scope="col">{t('colTitle')}</th>
          <th scope="col">{t('colState')}</th>
          <th scope="col">{t('colForm')}</th>
          <th scope="col">{t('colTopics')}</th>
          <th scope="col">{t('colWriter')}</th>
          <th scope="col">{t('colChanged')}</th>
        </tr>
      </thead>
      <tbody>
        {questions.map((one) => (
          <tr key={one.id}>
            <td>
              <Link className={styles.way} href={`/questions/${one.questionId}?version=${one.number}`} prefetch={false}>
                {one.title}
              </Link>
              <span className={styles.sub}>{t('version', { number: one.number })}</span>
            </td>
            <td data-label={t('colState')}>{t(`states.${one.state}`)}</td>
            <td data-label={t('colForm')}>{t(`forms.${one.form}`)}</td>
            <td data-label={t('colTopics')}>
              {topicsIn(one.topics)
                .map((id) => names.get(id) ?? id)
                .join(', ')}
            </td>
            <td data-label={t('colWriter')}>{one.writer ?? t('erased')}</td>
            <td className={styles.kept} data-label={t('colChanged')}>
              {shownDate(one.changedAt, settings)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
