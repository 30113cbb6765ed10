import type { Metadata } from 'next';
import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { organizationOf } from '@/app/_server/permit';
import { ActForm } from '@/app/_ui/act-form';
import { Field } from '@/app/_ui/field';
import styles from '@/app/_ui/lines.module.css';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { listClasses } from '@/db/queries/classes';
import { can } from '@/lib/accounts/can';
import { addClass } from './actions';

/** More classes than an organisation has. */
const LISTED = 300;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('classes');
  return { title: t('title') };
}

export default page('/classes', async (permit) => {
  const classes = await listClasses(database(), organizationOf(permit), LISTED);
  const t = await getTranslations('classes');
  const problems = await getTranslations('problems');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <h1>{t('title')}</h1>
        <section className={ui.panel} aria-label={t('title')}>
          {classes.length === 0 && <p>{t('none')}</p>}
          <ul className={styles.lines}>
            {classes.map(({ id, name, people, archivedAt }) => (
              <li key={id}>
                <Link className={styles.way} href={`/classes/${id}`} prefetch={false}>
                  {name}
                </Link>
                <span className={ui.small}>
                  {t('people', { count: people })}
                  {archivedAt && ` · ${t('archived')}`}
                </span>
              </li>
            ))}
          </ul>
        </section>
        {can(permit.session.actor, 'classes.change', permit.resource) && (
          <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="add">
            <h2 id="add">{t('addTitle')}</h2>
            <ActForm className={ui.stack} action={addClass} submit={t('add')} failed={problems('no-answer')}>
              <Field label={t('name')} name="name" required maxLength={80} autoComplete="off" />
            </ActForm>
          </section>
        )}
      </main>
    </>
  );
});
