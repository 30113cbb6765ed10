import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { ActForm } from '@/app/_ui/act-form';
import { asItIs, Field } from '@/app/_ui/field';
import styles from '@/app/_ui/lines.module.css';
import { shownDate } from '@/app/_ui/shown-date';
import ui from '@/app/_ui/ui.module.css';
import { listOrganizations, type OrganizationLine } from '@/db/queries/organizations';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { addOrganization, inviteFirstAdministrator } from './actions';

/** More organisations than share an installation. */
const LISTED = 500;

/** The organisations that share this installation, and the way to add one. */
export async function Organizations({ settings }: { settings: OrganizationSettings }) {
  const organizations = await listOrganizations(database(), LISTED);
  const t = await getTranslations('upkeep');
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="organizations">
      <h2 id="organizations">{t('organizationsTitle')}</h2>
      <ul className={styles.lines}>
        {organizations.map((one) => (
          <li key={one.id}>
            <span>{one.name}</span>
            <span className={ui.small}>
              {t('organization', { slug: one.slug, people: one.people, since: shownDate(one.createdAt, settings) })}
              {one.demo && ` · ${t('invented')}`}
            </span>
            {one.people === 0 && <NewLink organization={one} />}
          </li>
        ))}
      </ul>
      <AddOrganization />
    </section>
  );
}

/** For an organisation whose first link was lost or got too old. */
async function NewLink({ organization: { id, name } }: { organization: OrganizationLine }) {
  const t = await getTranslations('upkeep');
  const problems = await getTranslations('problems');
  return (
    <ActForm
      className={styles.onScreen}
      action={inviteFirstAdministrator}
      submit={t('newLink', { name })}
      failed={problems('no-answer')}
      done={t('newLinkMade')}
      quiet
    >
      <input type="hidden" name="organizationId" value={id} />
    </ActForm>
  );
}

async function AddOrganization() {
  const t = await getTranslations('upkeep');
  const problems = await getTranslations('problems');
  return (
    <div className={`${ui.stack} ${styles.onScreen}`}>
      <h3>{t('addTitle')}</h3>
      <ActForm
        className={ui.stack}
        action={addOrganization}
        submit={t('add')}
        failed={problems('no-answer')}
        done={t('added')}
        clears
      >
        <Field label={t('name')} name="name" required maxLength={80} autoComplete="off" />
        <Field
          label={t('slug')}
          rule={t('slugRule')}
          name="slug"
          required
          maxLength={40}
          autoComplete="off"
          {...asItIs}
        />
      </ActForm>
    </div>
  );
}
