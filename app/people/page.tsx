import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { settingsFor } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import { Field } from '@/app/_ui/field';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { listPeople, listPlaces } from '@/db/queries/people';
import { can } from '@/lib/accounts/can';
import { type Role, roles } from '@/lib/accounts/roles';
import { Invitations } from './invitations';
import styles from './people.module.css';
import { PeopleTable } from './people-table';

/** As many as a page holds; beyond, one searches. */
const LISTED = 500;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('people');
  return { title: t('title') };
}

/** Everybody of the organisation. */
export default page('/people', async (permit, { searchParams }: PageProps<'/people'>) => {
  const filter = filterFrom(await searchParams);
  const organizationId = organizationOf(permit);
  const people = await listPeople(database(), organizationId, filter, LISTED);
  const places = await listPlaces(
    database(),
    organizationId,
    people.map(({ id }) => id),
  );
  const settings = await settingsFor(permit.session);
  const { actor } = permit.session;
  const t = await getTranslations('people');
  return (
    <>
      <SiteHeader />
      <main id="main" className={ui.page}>
        <h1>{t('title')}</h1>
        {can(actor, 'people.add', permit.resource) && (
          <p className={styles.ways}>
            <Link className={ui.primary} href="/people/add" prefetch={false}>
              {t('add')}
            </Link>
            <Link className={styles.way} href="/people/import" prefetch={false}>
              {t('import')}
            </Link>
          </p>
        )}
        <section className={`${ui.panel} ${ui.stack}`} aria-label={t('title')}>
          <Filter {...filter} />
          <p className={ui.small} role="status">
            {t('count', { count: people.length })} {people.length === LISTED && t('limited', { count: LISTED })}
          </p>
          {people.length > 0 && <PeopleTable people={people} places={places} settings={settings} />}
        </section>
        {can(actor, 'people.invite', permit.resource) && <Invitations permit={permit} settings={settings} />}
      </main>
    </>
  );
});

interface Asked {
  search: string | undefined;
  role: Role | undefined;
}

function filterFrom({ search, role }: Record<string, string | string[] | undefined>): Asked {
  return {
    search: typeof search === 'string' && search.trim() !== '' ? search.trim().slice(0, 80) : undefined,
    role: roles.find((known) => known === role),
  };
}

async function Filter({ search, role }: Asked) {
  const t = await getTranslations('people');
  const names = await getTranslations('roles');
  return (
    <search>
      <form className={styles.filter} method="get" action="/people">
        <Field
          label={t('search')}
          name="search"
          type="search"
          defaultValue={search}
          maxLength={80}
          autoComplete="off"
        />
        <label className={ui.field}>
          <span>{t('role')}</span>
          <select name="role" defaultValue={role ?? ''}>
            <option value="">{t('anyRole')}</option>
            {roles.map((one) => (
              <option key={one} value={one}>
                {names(one)}
              </option>
            ))}
          </select>
        </label>
        <button type="submit">{t('find')}</button>
      </form>
    </search>
  );
}
