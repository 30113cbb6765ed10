import { useTranslations } from 'next-intl';
import type { Imported } from '@/app/_server/people/add-imported';
import ui from '@/app/_ui/ui.module.css';
import { shownName } from '@/lib/accounts/sign-in-name';
import styles from '../people.module.css';

/** Who came in, with the PINs and links that are shown this once. */
export function ImportedPeople({ people }: { people: readonly Imported[] }) {
  const t = useTranslations('people');
  return (
    <>
      <h2>{t('importedTitle', { count: people.length })}</h2>
      <p className={ui.notice}>{t('importedBody')}</p>
      <table className={styles.people}>
        <thead>
          <tr>
            <th scope="col">{t('colName')}</th>
            <th scope="col">{t('colSignIn')}</th>
            <th scope="col">{t('colSecret')}</th>
          </tr>
        </thead>
        <tbody>
          {people.map(({ name, address, secret }) => (
            <tr key={address}>
              <td>{name}</td>
              <td>{shownName(address)}</td>
              <td className={ui.code}>{secret}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
