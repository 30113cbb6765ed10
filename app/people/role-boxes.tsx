import { getTranslations } from 'next-intl/server';
import type { Role } from '@/lib/accounts/roles';
import styles from './people.module.css';

/** The roles that somebody may be given, with those that they have ticked. */
export async function RoleBoxes({ choices, held }: { choices: readonly Role[]; held: readonly Role[] }) {
  const t = await getTranslations('people');
  const roles = await getTranslations('roles');
  return (
    <fieldset className={styles.roles}>
      <legend>{t('roles')}</legend>
      {choices.map((role) => (
        <label key={role}>
          <input type="checkbox" name="roles" value={role} defaultChecked={held.includes(role)} />
          {roles(role)}
        </label>
      ))}
    </fieldset>
  );
}
