import Link from 'next/link';
import { useTranslations } from 'next-intl';
import { shownDate } from '@/app/_ui/shown-date';
import type { SetLine } from '@/db/queries/sets';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { taskCount } from '@/lib/sets/set-body';
import styles from './sets.module.css';

/** Sets in lines; on a narrow screen each in a block of its own. */
export function SetTable({
  sets,
  ownId,
  settings,
}: {
  sets: readonly SetLine[];
  /** Of the reader. */
  ownId: string;
  settings: OrganizationSettings;
}) {
  const t = useTranslations('sets');
  return (
    <table className={styles.sets}>
      <thead>
        <tr>
          <th scope="col">{t('colTitle')}</th>
          <th scope="col">{t('colTasks')}</th>
          <th scope="col">{t('colMaker')}</th>
          <th scope="col">{t('colSeen')}</th>
          <th scope="col">{t('colChanged')}</th>
        </tr>
      </thead>
      <tbody>
        {sets.map(({ id, newest, maker, createdBy, sharedAt }) => (
          <tr key={id}>
            <td>
              <Link className={styles.way} href={`/sets/${id}`} prefetch={false}>
                {newest.body.title}
              </Link>
              <span className={styles.sub}>
                {t('version', { number: newest.number })}
                {newest.frozenAt && `, ${t('assigned')}`}
              </span>
            </td>
            <td data-label={t('colTasks')}>{taskCount(newest.body)}</td>
            <td data-label={t('colMaker')}>{createdBy === ownId ? t('you') : (maker ?? t('erased'))}</td>
            <td data-label={t('colSeen')}>{t(sharedAt ? 'shared' : 'unshared')}</td>
            <td data-label={t('colChanged')}>{shownDate(newest.changedAt, settings)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
