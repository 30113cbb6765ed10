import { useTranslations } from 'next-intl';
import type { ImportRow } from '@/app/_server/people/parse-import';
import ui from '@/app/_ui/ui.module.css';
import { shownName } from '@/lib/accounts/sign-in-name';
import styles from '../people.module.css';

/** Every row of a list, and what would come of it. */
export function Preview({ rows }: { rows: readonly ImportRow[] }) {
  const t = useTranslations('people');
  const faults = useTranslations('importFaults');
  const roles = useTranslations('roles');
  const bad = rows.filter((row) => row.faults.length > 0).length;
  return (
    <>
      <p role="status">
        {t('importGood', { count: rows.length - bad })} {bad > 0 && t('importBad', { count: bad })}
      </p>
      <table className={styles.people}>
        <thead>
          <tr>
            <th scope="col">{t('colRow')}</th>
            <th scope="col">{t('colName')}</th>
            <th scope="col">{t('colSignIn')}</th>
            <th scope="col">{t('colClasses')}</th>
            <th scope="col">{t('colWhat')}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.row}>
              <td data-label={t('colRow')}>{row.row}</td>
              <td>{row.name || '–'}</td>
              <td data-label={t('colSignIn')}>{row.address ? shownName(row.address) : '–'}</td>
              <td data-label={t('colClasses')}>{row.className || '–'}</td>
              <td>
                {row.faults.length === 0
                  ? row.roles.map((role) => roles(role)).join(', ')
                  : row.faults.map(({ fault, value }) => (
                      <span key={fault} className={ui.alert}>
                        {faults(fault, { value: value.slice(0, 60) })}
                      </span>
                    ))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
