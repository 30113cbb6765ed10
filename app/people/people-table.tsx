import Link from 'next/link';
import { useTranslations } from 'next-intl';
import { shownDate } from '@/app/_ui/shown-date';
import type { PersonLine, PlaceLine } from '@/db/queries/people';
import { parseRoles } from '@/lib/accounts/roles';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { shownName } from '@/lib/accounts/sign-in-name';
import styles from './people.module.css';

/** People in lines; on a narrow screen each in a block of its own. */
export function PeopleTable({
  people,
  places,
  settings,
}: {
  people: readonly PersonLine[];
  places: readonly PlaceLine[];
  settings: OrganizationSettings;
}) {
  const t = useTranslations('people');
  const roles = useTranslations('roles');
  return (
    <table className={styles.people}>
      <thead>
        <tr>
          <th scope="col">{t('colName')}</th>
          <th scope="col">{t('colRoles')}</th>
          <th scope="col">{t('colClasses')}</th>
          <th scope="col">{t('colFinished')}</th>
          <th scope="col">{t('colLast')}</th>
          <th scope="col">{t('colState')}</th>
        </tr>
      </thead>
      <tbody>
        {people.map(({ id, name, address, role, lastStartedAt, finished, deactivatedAt, erasureAskedAt }) => (
          <tr key={id}>
            <td>
              <Link className={styles.way} href={`/people/${id}`} prefetch={false}>
                {name}
              </Link>
              <span className={styles.sub}>{shownName(address)}</span>
            </td>
            <td>
              {parseRoles(role)
                .map((one) => roles(one))
                .join(', ')}
            </td>
            <td data-label={t('colClasses')}>
              {places
                .filter(({ userId }) => userId === id)
                .map((place) => place.name)
                .join(', ') || '–'}
            </td>
            <td data-label={t('colFinished')}>{t('finished', { count: finished })}</td>
            <td data-label={t('colLast')}>{lastStartedAt ? shownDate(lastStartedAt, settings) : t('never')}</td>
            <td data-label={t('colState')}>
              {deactivatedAt ? t('deactivated') : t('active')}
              {erasureAskedAt && ` · ${t('erasureAsked')}`}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
