import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import ui from '@/app/_ui/ui.module.css';
import { listClasses } from '@/db/queries/classes';

/** More classes than an organisation has. */
const LISTED = 300;

/** A class to be put in at once, or none. */
export async function ClassChoice({ organizationId }: { organizationId: string }) {
  const classes = await listClasses(database(), organizationId, LISTED);
  const open = classes.filter(({ archivedAt }) => archivedAt === null);
  const t = await getTranslations('people');
  if (open.length === 0) return null;
  return (
    <label className={ui.field}>
      <span>{t('class')}</span>
      <select name="classId" defaultValue="">
        <option value="">{t('noClass')}</option>
        {open.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
